using Microsoft.Playwright;

namespace Underturf.Browser;

/// <summary>What a reader of the page sees, taken from its text.</summary>
internal sealed record ShownQuestion(string Id, string Symptom, IReadOnlyList<ShownExplanation> Explanations, IReadOnlyList<string> Moves);

internal sealed record ShownExplanation(string Fault, string Percent, string Summary, IReadOnlyList<ShownEvidence> Evidence);

internal sealed record ShownEvidence(string Entry, string Predicted, string Observed);

internal static class ShownAnswers
{
    public static async Task<IReadOnlyList<ShownQuestion>> ReadAsync(IPage page)
    {
        var questions = new List<ShownQuestion>();
        foreach (var card in await page.Locator("article.question").AllAsync())
        {
            var explanations = new List<ShownExplanation>();
            foreach (var item in await card.Locator("li.explanation").AllAsync())
            {
                explanations.Add(await ExplanationAsync(item));
            }

            questions.Add(new ShownQuestion(
                await card.GetAttributeAsync("data-question") ?? "",
                await TextAsync(card.Locator("h3")),
                explanations,
                await card.Locator(".move-action").AllTextContentsAsync()));
        }

        return questions;
    }

    private static async Task<ShownExplanation> ExplanationAsync(ILocator item)
    {
        var rows = await item.Locator("tbody tr").AllAsync();
        var evidence = new List<ShownEvidence>();
        foreach (var row in rows)
        {
            evidence.Add(new ShownEvidence(
                await row.GetAttributeAsync("data-entry") ?? "",
                await TextAsync(row.Locator("[data-label=Predicted]")),
                await TextAsync(row.Locator("[data-label=Read]"))));
        }

        return new ShownExplanation(
            await item.GetAttributeAsync("data-fault") ?? "",
            await TextAsync(item.Locator(".percent")),
            await TextAsync(item.Locator(".summary")),
            evidence);
    }

    private static async Task<string> TextAsync(ILocator locator) => (await locator.TextContentAsync() ?? "").Trim();
}
