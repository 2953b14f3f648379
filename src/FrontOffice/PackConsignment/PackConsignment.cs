using System.Collections.Immutable;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Outwork.Print;

namespace WitnessMark.FrontOffice.PackConsignment;

/// <param name="Vehicle">Its name.</param>
public sealed record PackRequest(Consignment Box, Firm Firm, string Vehicle, DateOnly Printed);

/// <param name="Sheets">Two copies on each: one stays, one goes in the box.</param>
public sealed record PackResult(ImmutableArray<Sheet> Sheets, ImmutableArray<string> Cautions)
{
    public PrintOut Pdf(DateTimeOffset? created) => PrintOut.Pdf("consignment", Sheets, created);
}

/// <summary>The list of a box that goes out for work.</summary>
public static class PackConsignment
{
    /// <exception cref="RefusedException">The box cannot be kept as it is, or the firm is another one.</exception>
    public static PackResult Run(PackRequest request)
    {
        if (request.Box.Wrong() is { } wrong) throw new RefusedException(wrong);
        if (request.Firm.Id != request.Box.FirmId) throw new RefusedException(Refusal.Of("firm", request.Firm.Name, "the box goes to another one"));
        return new(ConsignmentList.Sheets(request.Box, request.Firm.Name, request.Vehicle, request.Printed), OutCautions.For(request.Box));
    }
}
