using System.Text.Json.Nodes;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// Turns the fields of a body from one version of its kind to the next, in place. A problem says why the older body
/// cannot be told in the newer form.
/// </summary>
public delegate Problem? Lift(JsonObject body);

/// <summary>How one kind is read and written, and how its older versions are lifted.</summary>
public sealed class KindCodec
{
    private readonly Func<Fields, Fact> read;
    private readonly Action<BodyWriter, Fact> write;

    private KindCodec(
        string kind,
        int version,
        Type type,
        Func<Fields, Fact> read,
        Action<BodyWriter, Fact> write,
        IReadOnlyList<Lift> lifts)
    {
        Kind = kind;
        Version = version;
        Type = type;
        Lifts = lifts;
        this.read = read;
        this.write = write;
    }

    public string Kind { get; }

    /// <summary>The present version: what is written. Older ones are lifted to it when read.</summary>
    public int Version { get; }

    public Type Type { get; }

    /// <summary>Item 0 lifts version 1 to 2, item 1 version 2 to 3, and so on up to the present one.</summary>
    public IReadOnlyList<Lift> Lifts { get; }

    /// <exception cref="ArgumentException">A version has no lift to the next: a bug of whoever defines the kind.</exception>
    public static KindCodec Create<T>(
        string kind, int version, Func<Fields, T> read, Action<BodyWriter, T> write, params IReadOnlyList<Lift> lifts)
        where T : Fact => lifts.Count == version - 1
            ? new KindCodec(kind, version, typeof(T), read, (writer, fact) => write(writer, (T)fact), lifts)
            : throw new ArgumentException($"Version {version} of '{kind}' needs {version - 1} lifts", nameof(lifts));

    /// <summary>The codec of a kind under the stored name and version that <see cref="FactKinds"/> gives it.</summary>
    internal static KindCodec Standard<T>(Func<Fields, T> read, Action<BodyWriter, T> write, params IReadOnlyList<Lift> lifts)
        where T : Fact
    {
        var (kind, version, _) = FactKinds.All.Single(k => k.Type == typeof(T));
        return Create(kind, version, read, write, lifts);
    }

    internal Fact Read(Fields fields)
    {
        var own = read(fields);
        return own with
        {
            By = fields.OptionalText("by"),
            Sure = GradeText.Read(fields, "sure"),
            Note = fields.OptionalText("note"),
            Photos = fields.Hashes("photos"),
        };
    }

    internal void Write(BodyWriter writer, Fact fact)
    {
        write(writer, fact);
        writer.Text("by", fact.By);
        writer.Text("sure", fact.Sure == Grade.Measured ? null : GradeText.Of(fact.Sure));
        writer.Text("note", fact.Note);
        writer.Texts("photos", fact.Photos);
    }
}
