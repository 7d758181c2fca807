using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using CsCheck;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

/// <summary>Invented facts of every kind, made from the records' own properties, so that a new field is tried without being listed here.</summary>
internal static class FactCases
{
    private static readonly Gen<string> Words = Gen.OneOf(
        Gen.OneOf("s12", "valve by the chapel", "\"quoted\" \\ back", "Ω at 20 °C", "two\nlines\ttab", "Zürich Größe", "🌳", "\u2028</script>"),
        Gen.String[Gen.Char[' ', 'z'], 1, 12].Where(text => text.Trim().Length > 0));

    private static readonly Gen<double> Amount = Gen.OneOf(Gen.Int[0, 500].Select(n => n / 10.0), Gen.Double[0, 90]);

    /// <summary>Minutes of a year, in any zone.</summary>
    private static Gen<object?> Days(int year) => Gen.Int[0, 500_000].Select(Gen.Int[-12, 12], (minute, hours) => (object?)new DateTimeOffset(year, 1, 1, 0, 0, 0, TimeSpan.FromHours(hours)).AddMinutes(minute));

    private static readonly Gen<Position> Places = Gen.Double[-400, 400].Select(Gen.Double[-400, 400], (e, n) => new Position(e, n));

    private static readonly Gen<string> Hashes = Gen.String[Gen.OneOf(Gen.Char['0', '9'], Gen.Char['a', 'f']), 64, 64];

    private static readonly Gen<Shown> Displays = Gen.OneOf(
        Gen.Const(Shown.OverRange),
        Gen.Int[0, 9999].Select(Gen.OneOf("ohm", "kohm", "V", "mA", "psi", "gpm", "C"), (n, unit) => Shown.Parse($"{n / 10.0} {unit}").Value));

    private static readonly Dictionary<(Type, string), Gen<object?>> Special = new()
    {
        [(typeof(PropertyFact), "Units")] = Gen.OneOf<object?>("us", "si"),
        [(typeof(GroundFact), "What")] = Gen.OneOf<object?>("hardscape", "bed", "lawn", "building", "wall", "tree", "water", "utility mark", "other"),
        [(typeof(GroundFact), "Shape")] = Places.Array[1, 5].Select(a => (object?)a),
        [(typeof(TestFact), "Behaved")] = Gen.OneOf<object?>("opens", "chatters", "stays shut", null),
        [(typeof(ReworkStepFact), "Did")] = Gen.OneOf<object?>("proven", "useless", "landed", "passed", "failed", "kept"),
        [(typeof(SettingFact), "State")] = Gen.OneOf<object?>("shut", "open", "partly open"),
        [(typeof(LocateTicketFact), "From")] = Gen.OneOf(Days(2030), Gen.Const((object?)null)),
        [(typeof(LocateTicketFact), "Expires")] = Gen.OneOf(Days(2031), Gen.Const((object?)null)),
        [(typeof(LocateTicketFact), "Area")] = Gen.OneOf(Places.Array[3, 6], Gen.Const(Array.Empty<Position>())).Select(a => (object?)a),
        [(typeof(ApprovalFact), "Of")] = Gen.OneOf<object?>("owner", "arborist", "other"),
        [(typeof(ApprovalFact), "State")] = Gen.OneOf<object?>("asked", "granted", "refused"),
        [(typeof(PartsFact), "State")] = Gen.OneOf<object?>("needed", "ordered", "at hand"),
        [(typeof(PhotoFact), "Hash")] = Hashes.Select(h => (object?)h),
        [(typeof(PhotoFact), "Media")] = Gen.OneOf([.. PhotoFile.MediaTypes.Select(media => Gen.Const<object?>(media))]),
        [(typeof(PaperIssuedFact), "Hash")] = Hashes.Select(h => (object?)h),
        [(typeof(CatchFact), "Where")] = Gen.Const<object?>(Array.Empty<Position>()),
        [(typeof(Fact), "Photos")] = Hashes.Array[0, 2].Select(a => (object?)a),
    };

    private static readonly Dictionary<Type, Gen<object?>> ByType = new()
    {
        [typeof(string)] = Words.Select(w => (object?)w),
        [typeof(double)] = Amount.Select(a => (object?)a),
        [typeof(int)] = Gen.Int[1, 500].Select(n => (object?)n),
        [typeof(bool)] = Gen.Bool.Select(b => (object?)b),
        [typeof(Grade)] = Gen.OneOf(Enum.GetValues<Grade>()).Select(g => (object?)g),
        [typeof(DateTimeOffset)] = Days(2032),
        [typeof(Shown)] = Displays.Select(s => (object?)s),
        [typeof(Position)] = Places.Select(p => (object?)p),
        [typeof(Length)] = Gen.OneOf(Amount.Select(Length.FromSi), Gen.Int[1, 900].Select(n => Length.FromSi(Units.From(n, "ft")))).Select(l => (object?)l),
        [typeof(Resistance)] = Amount.Select(a => (object?)Resistance.FromSi(a)),
        [typeof(Voltage)] = Amount.Select(a => (object?)Voltage.FromSi(a)),
        [typeof(ApparentPower)] = Amount.Select(a => (object?)ApparentPower.FromSi(a)),
        [typeof(Frequency)] = Amount.Select(a => (object?)Frequency.FromSi(a)),
        [typeof(PumpRelay)] = Gen.OneOf(Gen.Bool.Select(fitted => new PumpRelay(fitted, null)), Amount.Select(a => new PumpRelay(true, Resistance.FromSi(a)))).Select(r => (object?)r),
        [typeof(Flow)] = Amount.Select(a => (object?)Flow.FromSi(a)),
        [typeof(Pressure)] = Amount.Select(a => (object?)Pressure.FromSi(a)),
        [typeof(Volume)] = Amount.Select(a => (object?)Volume.FromSi(a)),
        [typeof(Area)] = Amount.Select(a => (object?)Area.FromSi(a)),
        [typeof(WireSize)] = Gen.OneOf(Gen.Int[0, 40].Select(n => WireSize.FromAwg(n)), Gen.Int[1, 200].Select(n => WireSize.FromSquareMillimetres(n / 2.0)))
            .Select(w => (object?)w),
        [typeof(IReadOnlyList<string>)] = Words.Array[0, 3].Select(a => (object?)a),
        [typeof(IReadOnlyList<Length>)] = Amount.Select(Length.FromSi).Array[1, 4].Select(a => (object?)a),
        [typeof(IReadOnlyList<Position>)] = Places.Array[0, 4].Select(a => (object?)a),
    };

    /// <summary>A fact of any kind.</summary>
    public static Gen<Fact> Any { get; } = Gen.OneOf([.. FactKinds.All.Select(k => Of(k.Type))]);

    /// <summary>A fact of any kind that does not speak of other entries.</summary>
    public static Gen<Fact> Plain { get; } = Any.Where(fact => fact is not (StrikeFact or RestoreFact));

    public static Gen<Fact> Of(Type type) => type.GetProperties()
        .Where(p => p.CanWrite)
        .Select(p => ValueOf(type, p).Select(value => (Property: p, Value: value)))
        .Aggregate(
            Gen.Const(ImmutableList<(PropertyInfo Property, object? Value)>.Empty),
            (all, next) => all.Select(next, (list, pair) => list.Add(pair)))
        .Select(values => Make(type, values));

    private static Gen<object?> ValueOf(Type type, PropertyInfo property)
    {
        if (Special.TryGetValue((type, property.Name), out var special) || Special.TryGetValue((property.DeclaringType!, property.Name), out special))
        {
            return special;
        }

        var inner = ByType[Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType];
        var required = property.GetCustomAttribute<RequiredMemberAttribute>() is not null;
        var optional = new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable;
        return required || !optional ? inner : Gen.Bool.SelectMany(given => given ? inner : Gen.Const((object?)null));
    }

    private static Fact Make(Type type, ImmutableList<(PropertyInfo Property, object? Value)> values)
    {
        var fact = (Fact)Activator.CreateInstance(type)!;
        foreach (var (property, value) in values)
        {
            property.SetValue(fact, value);
        }

        return fact;
    }
}
