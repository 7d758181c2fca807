using System.Text;
using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>Notes that one tap writes, as they travel from the worker to the page.</summary>
internal static class NoteBodies
{
    public static IReadOnlyList<string> Of(IReadOnlyList<Fact> facts) => [.. facts.Select(f => Encoding.UTF8.GetString(BodyText.Write(f)))];

    public static IReadOnlyList<Fact> Read(IReadOnlyList<string> bodies) => [.. Drafts.Read(Encoding.UTF8.GetBytes(string.Join('\n', bodies))).Notes.Select(n => n.Fact)];
}
