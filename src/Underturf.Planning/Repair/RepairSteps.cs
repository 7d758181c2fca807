using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>The steps of repairing a valve that are still to be done, each with the caution that belongs to it.</summary>
internal sealed class RepairSteps(ValveCase valve, RepairOption option)
{
    public const string Ready = "parts laid out";
    public const string ShutOff = "shut off";
    public const string Proved = "no pressure";
    public const string Reached = "laid bare";
    public const string Emptied = "hole emptied";
    public const string CoilOut = "coil out";
    public const string Opened = "opened";
    public const string Filled = "filled";
    public const string Flushed = "flushed";
    public const string Closes = "closes";
    public const string Loaded = "runs under load";
    public const string Closed = "closed up";

    private readonly RepairRound round = valve.Round;
    private readonly RepairingPractice book = valve.Site.Numbers;

    private bool IsNew => option.Kind is RepairKind.Replace or RepairKind.Move;

    /// <summary>None where it was closed up and belief has nothing against it. Once it is worked on, what comes before is behind.</summary>
    public IReadOnlyList<RepairStep> Write() => round.IsClosed && valve.Chance is null ? [] :
        [.. (round.Worked is null ? Before().Where(s => !round.Done.Contains(s.Key)).Append(Work()) : []), .. After().Where(s => !round.Done.Contains(s.Key))];

    private IEnumerable<RepairStep> Before()
    {
        yield return Step(Ready, $"lay out the parts on a cloth, {Kinds()}, as listed", book.ReadyMinutes, "Have size, body style, bonnet screws and coil thread agree with the valve before anything is opened.");
        if (valve.Shut is { } shut)
        {
            var turned = shut.Shut.Where(s => valve.Site.View.IsolationValves.ContainsKey(s.Id)).Select(s => new SettingFact { Of = s.Id, State = "shut" });
            yield return Step(ShutOff, $"programme off; {valve.ShutWords}", CostLine.Exact(shut.Minutes), shut.Needed is null ? "Tell those who drink from it." : $"It cannot be shut off by itself: {shut.Needed}. Tell those who drink from it.", more: [.. turned]);
            yield return Step(Proved, shut.Relieve[0], 0, "Prove zero pressure before you open anything. Nobody energises the valve from here on: controller off and locked.", shut.Relieve[1]);
        }

        yield return Step(Reached, ReachWords(), ReachMinutes(), ReachCaution());
        if (valve.Hole(option.Kind) is { } way && option.Kind != RepairKind.Move)
        {
            yield return Step(Emptied, $"{way.Say}: {way.Condition}", way.Before is { } before ? CostLine.Exact((before.Least + before.Most) / 2) : 0, "Muddy water must not flow back into the main. Water and electricity: nothing energised, a pump behind an earth-fault breaker.");
        }

        yield return Open();
    }

    /// <summary>With what may be seen: it can turn the plan.</summary>
    private RepairStep Open()
    {
        var isCoil = option.Kind == RepairKind.Coil;
        var say = isCoil ? "turn the coil out and look: plunger, spring, seal ring, port" : "photograph it, take the bonnet off, keep the order of the parts, look at diaphragm, seat, ports and body";
        return Step(isCoil ? CoilOut : Opened, say, 0, "Springs jump. Nothing muddy may fall into the open valve: keep a cloth over it.") with
        {
            Sights = [.. valve.Causes.All.Where(c => !isCoil || c.Cause.Coil > 0).Select(c => new RepairSight(c.Cause.Name, c.Cause.Say, [RepairRound.Saw(valve.Id, c.Cause.Name)]))],
        };
    }

    private RepairStep Work()
    {
        var say = option.Kind switch
        {
            RepairKind.Coil => "put the new coil with plunger, spring and seal ring in, hand-tight; join its leads with new waterproof connectors",
            RepairKind.Clean => "rinse every part in clean water, free the ports with a soft wire, put all back with a new bonnet seal, screws crosswise",
            RepairKind.Rebuild => "new coil, plunger, spring and seals; diaphragm with washer; bonnet spring and seal; metering screen; flow-control stem and seals; bleed screw; seat ring where it comes out; new bonnet screws, crosswise",
            RepairKind.Donor => "put the donor's inside in with new seals, screws crosswise; join the leads with new waterproof connectors",
            _ => "cut the old one out, dry and clean the ends, set the new valve with the arrow along the flow, join it, let the cement cure as its label says",
        };
        return new RepairStep($"did {option.Kind.ToString().ToLowerInvariant()}", $"{option.Say}: {say}", valve.Name, WorkMinutes(), WorkCaution(), null, Worked(), []);
    }

    private IEnumerable<RepairStep> After()
    {
        yield return Step(Filled, $"fill slowly: {string.Join("; ", valve.Shut?.Refill.SkipLast(1) ?? ["open what was shut a little, let the air out, then all of it"])}", RepairLines.Mean(book.ProofMinutes), "Air under pressure bursts pipe: open slowly, stand clear.", more:
            [.. valve.Reopened.Select(id => new SettingFact { Of = id, State = "open" })]);
        yield return Check(Flushed, "lift the bleed until it runs clear and without air; flush the lateral at its last outlet", 0, "People clear of the outlets.", "clear water, no spitting, the bonnet dry all round");
        yield return Check(Closes, "let it close by itself and watch", 0, string.Empty, $"shut within {ClosingSeconds():0} s, the lowest outlet dry, the meter still with all off");
        if (valve.Station is { } station)
        {
            var number = valve.Site.View.StationNumber(station);
            var path = valve.Site.Notebook.Paths.GetValueOrDefault(station);
            var seen = path is null ? null : new Foresight(valve.Site.Notebook).Of(path);
            yield return Check(Loaded, $"run station {number} from the controller", 0, $"{valve.Site.Book.Run.Caution} No hands in the hole while it is energised.", $"opens{(valve.Fact.Waters is { } waters ? $" and waters {waters}" : string.Empty)}{(seen is null ? string.Empty : $"; {ReworkWords.Electrical(seen)}")}",
                new TestFact { Station = station, Watered = valve.Fact.Waters is { } place ? [place] : [], Behaved = "opens" });
        }

        yield return Step(Closed, "soil and lid back, level; mark the lid, take the ties", RepairLines.Mean(book.CloseMinutes), "A deep hole caves in: fill it or cover it before you turn away.", more: [.. Answered()]);
    }

    private string ReachWords() => option.Kind == RepairKind.Move ? "dig where the new valve is to be, and meet both pipes"
        : valve.Box is { } box ? $"open {valve.Site.View.Name(box)}; hand and driver must pass round the bonnet, {valve.Site.Small(book.ClearMillimetres)} clear"
        : "dig it up, from the side of the valve, not of the pipe";

    private decimal ReachMinutes() => RepairLines.Mean(valve.Box is not null && option.Kind != RepairKind.Move ? book.OpenMinutes : book.ExposeMinutes);

    private string ReachCaution()
    {
        var roots = valve.Roots.Count > 0 && option.Kind != RepairKind.Move ? $" Inside the protected ground of {string.Join(" and ", valve.Roots.Select(r => r.Ground.Name))}: hand or air only; roots of {valve.Site.Small(book.Roots.ArboristMillimetres)} and more are an arborist's." : string.Empty;
        return $"Utilities marked and the notice waited out; private lines are not marked; hand-dig near marks. Deep holes cave in. Wasps and snakes.{roots}";
    }

    private decimal WorkMinutes() => option.Kind switch
    {
        RepairKind.Coil => RepairLines.Mean(book.CoilMinutes),
        RepairKind.Clean => RepairLines.Mean(book.CleanMinutes),
        RepairKind.Rebuild => RepairLines.Mean(book.RebuildMinutes),
        RepairKind.Donor => RepairLines.Mean(book.Donors.Minutes),
        _ => RepairLines.Mean(book.ReplaceMinutes),
    };

    private string WorkCaution() => IsNew
        ? "Old grey cement pipe may hold asbestos: do not cut it. Keep soil out of the pipe. Fumes of primer and cement: air, no flame."
        : option.Kind == RepairKind.Coil ? valve.Site.Book.Repair("coil replaced")?.Caution ?? string.Empty
        : "Keep soil out of the open valve. Screws even and crosswise, not by force: stripped threads cost a valve.";

    private double ClosingSeconds() => valve.Site.Book.Water.Usual.ClosingSeconds is var usual ? usual.Median * Math.Exp(2 * usual.LogSpread) : 0;

    /// <summary>Work by its own kind for every fault that it cures, and what stands there now.</summary>
    private IReadOnlyList<Fact> Worked()
    {
        var remark = option.Say;
        var named = valve.Wrong.Select(w => valve.Site.Book.Faults.FirstOrDefault(f => f.Id == w.Fault)?.Repair ?? valve.Site.Book.Water.Faults.FirstOrDefault(f => f.Id == w.Fault)?.Repair).OfType<string>();
        var usual = option.Kind == RepairKind.Coil ? "coil replaced" : "valve rebuilt";
        var coil = option.Kind is RepairKind.Clean or RepairKind.Coil ? [] : new[] { "coil replaced" };
        var did = named.Prepend(usual).Concat(coil).Where(r => r.Length > 0).Distinct().Where(r => option.Kind != RepairKind.Clean || r != "coil replaced");
        return [.. did.Select(d => new WorkFact { Did = d, Place = valve.Place, Target = valve.Station ?? valve.Id, Note = remark }), .. valve.Wrong.Select(w => w.Fault).Distinct().Select(f => RepairRound.For(valve.Id, f)), RepairRound.Did(valve.Id, option.Kind)];
    }

    private RepairStep Step(string key, string say, decimal minutes, string caution, string? expect = null, IReadOnlyList<Fact>? more = null) =>
        new(key, say, WhereOf(key), minutes, caution, expect, [.. more ?? [], RepairRound.Noted(valve.Id, key)], []);

    private RepairStep Check(string key, string say, decimal minutes, string caution, string expect, params IReadOnlyList<Fact> more) =>
        new(key, say, WhereOf(key), minutes, caution, expect, [.. more, RepairRound.Noted(valve.Id, key)], [RepairRound.NotSo(valve.Id, key), Asked(expect)]);

    private string Question => $"repair-{valve.Id}-";

    private IEnumerable<QuestionOpenedFact> Questions => valve.Site.Notebook.History.Facts.QuestionsOpened.Select(q => q.Fact).Where(q => q.Id.StartsWith(Question, StringComparison.Ordinal));

    /// <summary>What is not as said opens a question.</summary>
    private QuestionOpenedFact Asked(string expect) => new() { Id = $"{Question}{Questions.Count() + 1}", Text = $"Why does {valve.Name} not do what was said after its repair: {expect}?", About = valve.Id };

    /// <summary>Once every check has passed, those that are open are closed.</summary>
    private IEnumerable<Fact> Answered() => Questions
        .Where(q => valve.Site.Notebook.History.Facts.QuestionsClosed.All(c => c.Fact.Id != q.Id))
        .Select(q => new QuestionClosedFact { Id = q.Id, Answer = "The valve does what was said." });

    private string WhereOf(string key) => key is ShutOff or Filled && valve.Shut is { Shut: [var first, ..] } ? first.Name.Replace("everything at ", string.Empty, StringComparison.Ordinal)
        : key == Loaded && valve.Station is { } s ? valve.Site.View.Name(valve.Site.View.Stations[s].Controller)
        : valve.Box is { } box ? valve.Site.View.Name(box)
        : valve.Name;

    private string Kinds() => option.Parts.Count == 1 ? "one kind" : $"{option.Parts.Count} kinds";
}
