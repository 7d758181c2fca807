using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Repair;

/// <summary>What a repair has to wait for: tickets and approvals.</summary>
internal static class Permissions
{
    public static IEnumerable<Permission> Of(ValveCase valve, RepairOption option)
    {
        var book = valve.Site.Numbers;
        var isNew = option.Kind is RepairKind.Replace or RepairKind.Move;
        if (valve.Box is null || isNew)
        {
            yield return Ticket(isNew ? "a new valve is dug in" : "it has no box and is dug up");
        }

        if (valve.Roots.Count > 0 && option.Kind != RepairKind.Move)
        {
            var (ground, metres) = valve.Roots[0];
            yield return new Permission(PermissionKind.Arborist, $"have an arborist at hand for roots of {valve.Site.Small(book.Roots.ArboristMillimetres)} and more", $"it lies {valve.Length(metres)} from {ground.Name}, whose ground of {valve.Length(ground.RadiusMetres)} is protected", book.Roots.ArboristPrice);
        }

        if (Price(option, book) is { } price)
        {
            yield return price;
        }
    }

    public static IEnumerable<Permission> Of(BoxCase box, RepairOption option)
    {
        var book = box.Site.Numbers;
        if (option.Parts.Any(p => book.Boxes.Any(b => b.Name == p.What)))
        {
            yield return Ticket("a larger box is dug in");
        }

        if (Price(option, book) is { } price)
        {
            yield return price;
        }
    }

    private static Permission Ticket(string why) => new(PermissionKind.LocateTicket, "have utilities marked and wait the legal notice", why, 0);

    private static Permission? Price(RepairOption option, RepairingPractice book) => option.Cost.Price > book.AgreeAbove
        ? new Permission(PermissionKind.Owner, "have the owner agree to the price", $"{option.Cost.Price:0.00}, and {Say.Share(1 - option.Cures)} that it is not the end of it", 0)
        : null;
}
