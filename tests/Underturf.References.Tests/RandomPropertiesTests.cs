using Underturf.References.Tests.RandomProperties;

namespace Underturf.References.Tests;

/// <summary>What the random properties are made of.</summary>
public sealed class RandomPropertiesTests(ITestOutputHelper output)
{
    [Fact]
    public void One_set_of_200_holds_every_kind_of_mixture_often()
    {
        var properties = PropertySet.All().ToArray();
        var counts = Enum.GetValues<Traits>().Where(t => t != Traits.None).Select(t => (Trait: t, Count: properties.Count(p => p.Traits.HasFlag(t)))).ToArray();

        output.WriteLine(string.Join(", ", counts.Select(c => $"{c.Trait} {c.Count}")));
        Assert.Equal(PropertySet.Count, properties.Length);
        Assert.All(counts, c => Assert.True(c.Count >= 8, $"{c.Trait}: {c.Count}"));
        Assert.InRange(properties.Max(p => p.Coils.Count), 300, 302);
        Assert.InRange(properties.Min(p => p.Coils.Count), 3, 5);
        Assert.True(properties.Count(p => (p.Traits & (Traits.TwoTransformers | Traits.SeveralLeaks | Traits.Crossed)) == (Traits.TwoTransformers | Traits.SeveralLeaks | Traits.Crossed)) > 3);
    }

    [Fact]
    public void The_same_seed_makes_the_same_property()
    {
        foreach (var (one, other) in PropertySet.All().Take(60).Zip(PropertySet.All()))
        {
            Assert.Equal(one.Network.ElementCount, other.Network.ElementCount);
            Assert.All(Enumerable.Range(0, one.Network.ElementCount), e => Assert.Equal(one.Network.ElementAt(e), other.Network.ElementAt(e)));
        }
    }
}
