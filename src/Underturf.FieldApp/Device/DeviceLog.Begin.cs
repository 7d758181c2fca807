using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Beginning a log: its first note names the property.</summary>
public sealed partial class DeviceLog
{
    /// <summary>An id is part of every line.</summary>
    private const int LongestId = 40;

    /// <summary>Begins the log of a property and opens it. Nothing where it is stored, else what kept it from being.</summary>
    public async Task<Problem?> BeginAsync(PropertyFact property)
    {
        if (unopened is not null)
        {
            return unopened;
        }

        await using var alone = await device.AloneAsync();
        var id = FreshId(property.Name);
        var entry = Pen.Seal(id, WriterOf(id), null, HybridTime.Next(default, device.WallMilliseconds), Signed(property));
        if (!entry.Succeeded)
        {
            return entry.Problem;
        }

        var stored = await device.AddAsync(id, StoredLines.Joined([entry.Value.Line]), entry.Value.Id, desk: null);
        if (!stored.Succeeded)
        {
            return stored.Problem;
        }

        if (stored.Value is not { } number)
        {
            return new Problem("this property", "was begun by another page of this browser", "Open this page anew");
        }

        (Document, last, unread, unstored) = (nothing.With(entry.Value), number, null, null);
        unstored = await RememberAsync(0);
        return null;
    }

    /// <summary>"Rose garden" is "rose-garden", or "rose-garden-2" where there is or was one on this device.</summary>
    private string FreshId(string name)
    {
        var letters = string.Concat(name.Trim().ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        var plain = string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
        var id = plain.Length == 0 ? "property" : plain[..Math.Min(plain.Length, LongestId)].TrimEnd('-');
        return !kept.ContainsKey(id) ? id : Enumerable.Range(2, int.MaxValue - 2).Select(n => $"{id}-{n}").First(free => !kept.ContainsKey(free));
    }
}
