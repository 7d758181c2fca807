using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>What somebody types into the field of a number pad.</summary>
public sealed class PadTextTests
{
    private static readonly string[] ohms = ["ohm", "kohm", "Mohm"];

    [Theory]
    [InlineData("12", "12 ohm")]
    [InlineData("12 ohm", "12 ohm")]
    [InlineData("1.2 kohm", "1.2 kohm")]
    [InlineData("12\u03a9", "12\u03a9")]
    public void A_number_has_the_unit_beside_it_unless_it_brings_one_that_fits(string typed, string kept) =>
        Assert.Equal(kept, PadText.Read(typed, "ohm", ohms).Value.Value?.Text);

    [Theory]
    [InlineData("OL")]
    [InlineData("0.L")]
    [InlineData("over range")]
    public void What_a_display_prints_over_range_is_over_range(string typed) =>
        Assert.True(PadText.Read(typed, "ohm", ohms).Value.IsOverRange);

    [Theory]
    [InlineData("12 volt", "Here resistance is asked for, not voltage: type the number alone, or change what was read")]
    [InlineData("0x10", "Type the number alone: its unit is chosen beside it")]
    [InlineData("twelve", "Type the number alone: its unit is chosen beside it; or tap \"over range\"")]
    [InlineData("-5 ohm", "A meter that shows this sees a voltage on the wire: note the volts, or reverse the leads and read again")]
    [InlineData("12,5", "Write a point for decimals and nothing between thousands: \"12.5 ohm\"")]
    public void What_cannot_be_read_is_told_with_what_to_do(string typed, string remedy) =>
        Assert.StartsWith(remedy, PadText.Read(typed, "ohm", ohms).Problem!.Remedy, StringComparison.Ordinal);

    [Fact]
    public void A_note_takes_the_unit_that_was_typed()
    {
        var draft = new NoteDraft { Kind = NoteKind.Reading, Stations = { "s1" }, Value = "12 ohm" };
        Assert.Equal("12 ohm", Assert.IsType<ReadingFact>(draft.ToFact().Value).Value.Value?.Text);
    }

    [Fact]
    public void A_can_that_cannot_be_read_is_not_left_out()
    {
        var draft = new NoteDraft { Kind = NoteKind.Catch, Stations = { "s1" }, Cans = { "12 mm" }, Value = "12 volt", Unit = "mm" };
        Assert.StartsWith("Here length is asked for", draft.ToFact().Problem!.Remedy, StringComparison.Ordinal);
        draft.Value = "0.5 in";
        Assert.Equal(2, Assert.IsType<CatchFact>(draft.ToFact().Value).Cans.Count);
    }
}
