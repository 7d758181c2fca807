using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>
/// Carries out rounds of touches on a made-up box. Errors come from what goes wrong on site, not from the practice book's chances: fields that couple to neighbours, damp ends that are
/// hard to hear, corroded ends that hardly make contact, a slip of the hand.
/// </summary>
public sealed class NamingHand
{
    private readonly NamingScene scene;
    private readonly PracticeBook book;
    private readonly SeededGenerator chance;
    private readonly double coupling;
    private readonly Dictionary<string, double> damp = [];
    private readonly Dictionary<string, double> badContact = [];
    private readonly Dictionary<string, double> fitted = [];

    public NamingHand(NamingScene scene, PracticeBook book)
    {
        (this.scene, this.book) = (scene, book);
        chance = new SeededGenerator(scene.Seed).Fork("hand");
        coupling = 0.15 + (0.2 * chance.NextDouble());
        foreach (var end in scene.Ends)
        {
            damp[end] = chance.NextDouble() < 0.06 ? 0.45 : 1;
            badContact[end] = chance.NextDouble() < 0.03 ? 0.08 : 0.006;
        }
    }

    /// <summary>What is noted of a round: resistors that had to be fitted first, then the touches.</summary>
    /// <param name="touched">How many ends were touched: a round may end with the first answer.</param>
    public IReadOnlyList<Fact> Do(NamingRound round, out int touched)
    {
        var way = book.Naming.Way(round.How)!;
        var facts = new List<Fact>();
        foreach (var fit in round.Fit)
        {
            var end = round.FromPlace ? scene.Ends.FirstOrDefault(e => scene.Truth[e] == fit.End) ?? fit.End : scene.Ends.First(e => $"end {e[1..]}" == fit.Name);
            var ohms = Resistance.FromSi(Shown.Parse(fit.Sign).Value.Value!.Value.Si);
            fitted[end] = ohms.Si * (1 + (0.006 * chance.NextNormal()));
            facts.Add(new ResistorFact { End = round.FromPlace ? fit.End : end, Ohms = ohms });
        }

        var (ends, answered) = (new List<string>(), new List<string>());
        foreach (var end in round.Touch)
        {
            ends.Add(end);
            if (way.Shows == NamingSign.Answers && (round.FromPlace ? AnswersBack(way, round, end) : Answers(way, round, end)))
            {
                answered.Add(end);
                if (round.UntilOne)
                {
                    break;
                }
            }
        }

        touched = ends.Count;
        facts.Add(new TouchFact
        {
            How = round.How,
            Place = NamingScene.Box,
            Put = round.Put,
            Against = round.Against,
            Touched = ends,
            Answered = way.Shows == NamingSign.Loudest ? [ends.MaxBy(e => round.FromPlace ? FieldOf(e, round.Put) : Loudness(e, round.Put))!] : answered,
            Value = way.Shows == NamingSign.Ohms ? Ohms(round) : null,
        });
        return facts;
    }

    private bool IsOnNoCommon(NamingRound round) => round.Against is { } against && scene.Truth[against] != NamingScene.Controller;

    private bool Answers(NamingWay way, NamingRound round, string end)
    {
        if (!way.NeedsCommon)
        {
            // A detector: a field over its threshold, from this wire or from neighbours that carry.
            return Loudness(end, round.Put) > 0.5;
        }

        if (IsOnNoCommon(round))
        {
            return false;
        }

        var slip = chance.NextDouble() < 0.003;
        var meant = slip ? scene.Ends[chance.NextInt(scene.Ends.Count)] : end;
        return scene.Truth[meant] is { } wire && round.Put.Contains(wire) && chance.NextDouble() >= badContact[meant];
    }

    /// <summary>A wire at the controller, something on ends in the box.</summary>
    private bool AnswersBack(NamingWay way, NamingRound round, string wire)
    {
        if (!way.NeedsCommon)
        {
            return FieldOf(wire, round.Put) > 0.5;
        }

        if (IsOnNoCommon(round))
        {
            return false;
        }

        var slip = chance.NextDouble() < 0.003;
        var meant = slip ? round.Touch[chance.NextInt(round.Touch.Count)] : wire;
        return round.Put.Any(end => scene.Truth[end] == meant && chance.NextDouble() >= badContact[end]);
    }

    /// <summary>What a wire at the controller shows of ends that carry in the box: it couples along the bundle as the ends do; a wire that is not in it hardly does.</summary>
    private double FieldOf(string wire, IReadOnlyList<string> put)
    {
        var own = scene.Ends.FirstOrDefault(e => scene.Truth[e] == wire);
        var field = own is not null && put.Contains(own) ? damp[own] : 0;
        foreach (var other in put.Where(e => e != own))
        {
            field += own is null ? coupling * 0.1 : coupling * Math.Exp(-Math.Abs(scene.Beside[own] - scene.Beside[other]));
        }

        return field * Math.Exp(0.2 * chance.NextNormal());
    }

    private double Loudness(string end, IReadOnlyList<string> put)
    {
        var field = scene.Truth[end] is { } own && put.Contains(own) ? damp[end] : 0;
        foreach (var other in scene.Ends.Where(e => e != end && scene.Truth[e] is { } wire && put.Contains(wire)))
        {
            field += coupling * Math.Exp(-Math.Abs(scene.Beside[end] - scene.Beside[other]));
        }

        if (scene.Truth[end] == NamingScene.Controller)
        {
            field += 0.25;
        }

        return field * Math.Exp(0.2 * chance.NextNormal());
    }

    /// <summary>The resistors hang between their ends and the one that the lead is on: if that is no common, nothing comes back. Several wires read together stand side by side.</summary>
    private Shown Ohms(NamingRound round)
    {
        if (IsOnNoCommon(round))
        {
            return Shown.OverRange;
        }

        var siemens = scene.Ends.Where(e => scene.Truth[e] is { } wire && round.Put.Contains(round.FromPlace ? e : wire) && e != round.Against && fitted.ContainsKey(e) && chance.NextDouble() >= badContact[e] * 2)
            .Sum(e => 1 / (fitted[e] + (2 * scene.WireOhms)));
        if (siemens == 0)
        {
            return Shown.OverRange;
        }

        var ohms = (1 / siemens * (1 + (0.004 * chance.NextStudentT(5)))) + (0.1 * chance.NextNormal());
        return Shown.Parse(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{ohms:0.0} ohm")).Value;
    }
}
