using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>What lies on the desk besides the log: where one is and what is typed and not stored. Kept on the device, so that the page goes on where it was killed.</summary>
/// <param name="Property">Of the log that was open; of another one only the name is taken.</param>
/// <param name="By">Who notes here.</param>
/// <param name="Noting">True where the form of the note stood open.</param>
public sealed record KeptDesk(string? Property, string? By, string Place, bool Noting, NoteDraft? Note, string? Box, BoxTask Task, EndDraft? End)
{
    /// <summary>What was tapped of a round of naming and not stored.</summary>
    public NamingDraft? Naming { get; init; }

    /// <summary>Id of the place that was being made dry.</summary>
    public string? Dry { get; init; }

    /// <summary>True where somebody was stopping water that runs.</summary>
    public bool Running { get; init; }

    /// <summary>How running water was being left, and who was told.</summary>
    public string? LeftAs { get; init; }

    public string? Told { get; init; }

    /// <summary>What the hand was at on Ground: what was being placed, tied, measured or looked for.</summary>
    public GroundHand? Ground { get; init; }

    public DayDraft? Day { get; init; }

    /// <summary>True where every valve was being given its station.</summary>
    public bool Rework { get; init; }

    /// <summary>Id of the valve or box that was being repaired.</summary>
    public string? Repair { get; init; }

    /// <summary>The station that a sweep was at, and the figure that was typed and not stored.</summary>
    public NoteDraft? Sweep { get; init; }

    /// <summary>True where a sweep was under way.</summary>
    public bool Sweeping { get; init; }

    /// <summary>How the desks of other logs were left on this device; nothing where there are none.</summary>
    public IReadOnlyList<KeptDesk>? Others { get; init; }

    /// <summary>Without what was typed for a fact that a panel stores.</summary>
    public KeptDesk Without(Fact stored) => stored switch
    {
        TouchFact => this with { Naming = Naming?.Stored() },
        LeftAsFact => this with { LeftAs = null, Told = null },
        LocateTicketFact ticket => this with { Day = Day?.Without(ticket.Places) },
        _ => this,
    };

    public string Write() => JsonSerializer.Serialize(this, KeptDeskJson.Default.KeptDesk);

    /// <summary>With the desks of other logs, which were written when they were left: a tap on this one writes none of them again.</summary>
    public string Write(IReadOnlyCollection<string> others) =>
        others.Count == 0 ? Write() : $"{(this with { Others = null }).Write()[..^1]},\"{nameof(Others)}\":[{string.Join(',', others)}]}}";

    /// <summary>Nothing where the text is of another build and cannot be read: a draft is lost then, never a note.</summary>
    public static KeptDesk? Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, KeptDeskJson.Default.KeptDesk);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>How a desk is written.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, IgnoreReadOnlyProperties = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(KeptDesk))]
internal sealed partial class KeptDeskJson : JsonSerializerContext;
