using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>How a grade is drawn, the same everywhere.</summary>
internal static class Grades
{
    public static string Class(Grade grade) => grade switch
    {
        Grade.Measured => "grade-measured",
        Grade.Told => "grade-told",
        Grade.Unknown => "grade-unknown",
        _ => "grade-inferred",
    };
}
