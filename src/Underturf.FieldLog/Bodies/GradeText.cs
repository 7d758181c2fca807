namespace Underturf.FieldLog;

/// <summary>The words for grades in the log.</summary>
internal static class GradeText
{
    private static readonly string[] Words = [.. Enum.GetValues<Grade>().Select(Of)];

    public static string Of(Grade grade) => grade.ToString().ToLowerInvariant();

    /// <summary>Measured where nothing is said.</summary>
    public static Grade Read(Fields fields, string name)
    {
        var word = fields.OptionalChoice(name, Words);
        return (Grade)Math.Max(0, Array.IndexOf(Words, word));
    }
}
