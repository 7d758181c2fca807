using System.Reflection;
using System.Text;
using System.Text.Json;
using Underturf.Standby;

// Runs the command line as often as it is asked, one order a line: most of what a short run costs is to start and to compile.
var entry = Assembly.Load("underturf").EntryPoint!;
using var orders = new StreamReader(Console.OpenStandardInput(), Encoding.UTF8);
using var results = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true };
while (await orders.ReadLineAsync() is { } line)
{
    await results.WriteLineAsync(JsonSerializer.Serialize(Run(JsonSerializer.Deserialize<Order>(line)!)));
}

Result Run(Order order)
{
    using var said = new StringWriter();
    using var complained = new StringWriter();
    Directory.SetCurrentDirectory(order.Folder);
    Console.SetOut(said);
    Console.SetError(complained);
    var code = (int)entry.Invoke(null, [order.Arguments.ToArray()])!;
    Directory.SetCurrentDirectory(AppContext.BaseDirectory);
    return new Result(code, said.ToString(), complained.ToString());
}
