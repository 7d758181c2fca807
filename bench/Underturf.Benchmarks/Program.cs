using Underturf.Benchmarks;

if (args.Length == 0)
{
    Console.Out.WriteLine("usage: ./prove STUDY [ARGUMENTS]");
    foreach (var study in Studies.All)
    {
        Console.Out.WriteLine($"  {study.Name,-12} {study.Question}");
    }

    return 0;
}

var wanted = Studies.All.FirstOrDefault(study => study.Name == args[0]);
if (wanted is null)
{
    Console.Error.WriteLine($"prove: there is no study \"{args[0]}\". Run ./prove without arguments for the list.");
    return 2;
}

return wanted.Run(Console.Out, args[1..]);
