using System.Globalization;

namespace Underturf.Planning.Day;

/// <summary>What a job waits for: a ticket where ground is dug, somebody's word, parts.</summary>
internal sealed class Permits(Grounds grounds, Tickets tickets)
{
    /// <summary>What is missing now; empty where it can be begun today.</summary>
    public IReadOnlyList<Want> Missing(Job job) => [.. Ground(job), .. job.Consents.Select(c => Word(job, c)).OfType<Want>(), .. Parts(job)];

    private IEnumerable<Want> Ground(Job job) => job.Digs && tickets.Window(job) is null ? [tickets.Missing(job)] : [];

    private Want? Word(Job job, Consent consent)
    {
        var who = consent.Of.ToString().ToLowerInvariant();
        var said = grounds.View.Approvals.Where(a => a.Value.Of == who && IsAbout(job, a.Value.About)).ToList();
        var (id, about) = (said.Select(a => a.Key).FirstOrDefault(), job.Things is [var thing, ..] ? thing : job.Place);
        return said.Exists(a => a.Value.State == "granted") ? null
            : said.Exists(a => a.Value.State == "refused") ? new Want(consent.Of, $"the {who}, who refused: {consent.Why}", "choose another way, or ask again", about, id)
            : new Want(consent.Of, $"the {who}: {consent.Why}", said.Count > 0 ? "asked; note the answer" : consent.Say, about, id);
    }

    private IEnumerable<Want> Parts(Job job) => grounds.View.Parts
        .Where(p => p.Value.State != "at hand" && IsAbout(job, p.Value.For))
        .Select(p => new Want(
            WantKind.Parts,
            $"{p.Value.What ?? "parts"}, {p.Value.State}{(p.Value.Due is { } due ? $", due {Day(due)}" : string.Empty)}",
            p.Value.State == "needed" ? "order them" : "note them at hand once they are here",
            p.Value.For,
            p.Key));

    private bool IsAbout(Job job, string noted)
    {
        var id = grounds.View.Identity.Of(noted);
        return id == job.Place || job.Things.Contains(id);
    }

    private string Day(DateTimeOffset at) => grounds.Facts.Zone.Told(at).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
