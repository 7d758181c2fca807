using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>What is open of the water: making a place dry, or water that runs now.</summary>
public sealed class WaterDesk
{
    /// <summary>Id of the place that is to be made dry.</summary>
    public string? Dry { get; private set; }

    /// <summary>Water runs where it should not, and somebody is at it.</summary>
    public bool IsRunning { get; private set; }

    /// <summary>How it is left and who was told, while that is being said.</summary>
    public string LeftAs { get; set; } = "";

    public string Told { get; set; } = "";

    public bool IsOpen => Dry is not null || IsRunning;

    public void MakeDry(string place) => (Dry, IsRunning) = (place, false);

    public void Run() => (Dry, IsRunning) = (null, true);

    public void Close() => (Dry, IsRunning, LeftAs, Told) = (null, false, "", "");

    /// <summary>Whether water comes to a thing, so that it can be made dry: a box only where it holds a valve.</summary>
    public static bool CanBeDry(PropertyView view, string? thing)
    {
        if (thing is null)
        {
            return false;
        }

        var id = view.Identity.Of(thing);
        return view.Valves.ContainsKey(id) || view.Stations.ContainsKey(id) || view.Fittings.ContainsKey(id) || view.Pipes.ContainsKey(id) || view.IsolationValves.ContainsKey(id)
            || (view.Boxes.ContainsKey(id) && view.Valves.Values.Any(v => v.Box is { } box && view.Identity.Of(box) == id));
    }
}
