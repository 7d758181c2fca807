using System.Text.Json;
using System.Text.Json.Serialization;
using Underturf.Quantities;

namespace Underturf.Property.Practice;

/// <summary>
/// The editable numbers of the trade and of the firm. Each block names its source or says "common practice".
/// Units are in the names; a spread of a length, coil or fault is the standard deviation of its natural logarithm.
/// </summary>
public sealed record PracticeBook
{
    public required string Version { get; init; }

    public required WirePractice Wire { get; init; }

    public required CoilPractice Coil { get; init; }

    public required SupplyPractice Supply { get; init; }

    public required RelayPractice Relay { get; init; }

    public required IReadOnlyList<InstrumentPractice> Instruments { get; init; }

    public required IReadOnlyList<ProbePractice> Probes { get; init; }

    public required RunPractice Run { get; init; }

    public required LookPractice Look { get; init; }

    public required TapingPractice Taping { get; init; }

    public required WalkPractice Walk { get; init; }

    public required IReadOnlyList<FaultPractice> Faults { get; init; }

    public required IReadOnlyList<RepairPractice> Repairs { get; init; }

    public required UnmodelledPractice Unmodelled { get; init; }

    public required AsBuiltPractice AsBuilt { get; init; }

    public required LossPractice Loss { get; init; }

    public required QuestionPractice Questions { get; init; }

    public required NamingPractice Naming { get; init; }

    public required LocatingPractice Locating { get; init; }

    public required WaterPractice Water { get; init; }

    public required ReworkPractice Rework { get; init; }

    public required RepairingPractice Repairing { get; init; }

    public required DayPractice Day { get; init; }

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>The book that comes with the program.</summary>
    public static PracticeBook Default { get; } = Read(DefaultBytes()).Value;

    /// <summary>The default book's file, to be copied and edited.</summary>
    public static byte[] DefaultBytes()
    {
        using var stream = typeof(PracticeBook).Assembly.GetManifestResourceStream("practice-book.json")
            ?? throw new InvalidOperationException("The practice book is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Reads a book. A problem names the field. A byte-order mark, which some editors add, does no harm.</summary>
    public static Outcome<PracticeBook> Read(ReadOnlySpan<byte> json)
    {
        var text = json.StartsWith(ByteOrderMark) ? json[ByteOrderMark.Length..] : json;
        if (PracticeBookWords.NoBook(text) is { } other)
        {
            return other;
        }

        try
        {
            var book = JsonSerializer.Deserialize(text, PracticeJson.Default.PracticeBook);
            return book is null
                ? new Problem("practice book", "is empty", "Start from the default book: underturf book > book.json")
                : PracticeBookRange.FirstProblem(text) is { } beyond ? beyond
                : PracticeBookCheck.FirstProblem(book) is { } problem ? problem : book;
        }
        catch (JsonException error)
        {
            return PracticeBookWords.Of(error);
        }
    }

    /// <summary>What a look can find: the names that belief reads, each once.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> Findings => [.. Faults.Where(f => f.Seen > 0).Select(f => f.FindingName).Distinct()];

    public ProbePractice? Probe(string name) => Probes.FirstOrDefault(p => p.Name == name);

    public InstrumentPractice Instrument(ProbePractice probe) => Instruments.First(i => i.Name == probe.Instrument);

    /// <summary>The instrument that is put across in this way; nothing where no probe does.</summary>
    public InstrumentPractice? InstrumentOf(Measure measures) => Probes.FirstOrDefault(p => p.Measures == measures) is { } probe ? Instrument(probe) : null;

    /// <summary>Of the wiring or of the water.</summary>
    public RepairPractice? Repair(string name) => Repairs.Concat(Water.Repairs).FirstOrDefault(r => r.Name == name);
}

[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UseStringEnumConverter = true,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(PracticeBook))]
internal sealed partial class PracticeJson : JsonSerializerContext;
