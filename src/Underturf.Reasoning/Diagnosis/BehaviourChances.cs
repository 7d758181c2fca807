namespace Underturf.Reasoning.Diagnosis;

/// <summary>How a valve behaves when its station is run.</summary>
internal enum Behaviour
{
    Opens,
    Chatters,
    StaysShut,
}

/// <summary>How likely each behaviour is; they sum to 1.</summary>
internal readonly record struct BehaviourChances(double Opens, double Chatters, double StaysShut)
{
    public double this[Behaviour behaviour] => behaviour switch
    {
        Behaviour.Opens => Opens,
        Behaviour.Chatters => Chatters,
        _ => StaysShut,
    };
}
