namespace Underturf.Networks.Hydraulics;

/// <summary>Friction along a lateral that gives off its water evenly, as a share of the friction if all ran to the end.</summary>
public static class MultipleOutlets
{
    /// <summary>
    /// F = N^-(m+1) (1^m + 2^m + ... + N^m): N outlets one spacing apart, the first a full spacing from the inlet (Christiansen, University of
    /// California Bulletin 670, 1942; the exact sum in place of his series).
    /// </summary>
    /// <param name="flowExponentNumber">m: 1.852 with Hazen and Williams, 2 with Darcy and Weisbach.</param>
    public static double ChristiansenFactor(int outlets, double flowExponentNumber)
    {
        var sum = 0.0;
        for (var k = 1; k <= outlets; k++)
        {
            sum += Math.Pow(k, flowExponentNumber);
        }

        return sum / Math.Pow(outlets, flowExponentNumber + 1);
    }
}
