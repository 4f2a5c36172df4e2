using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Sheets;

/// <summary>A sheet that was written.</summary>
/// <param name="Pdf">The bytes.</param>
/// <param name="Pages">How many pages.</param>
/// <param name="Worst">The gravest category as the vehicle leaves.</param>
/// <param name="MayLeave">True where nothing stops hand-back.</param>
/// <param name="No">True where the check of the same visit answers 'no'.</param>
public sealed record WrittenSheet(byte[] Pdf, int Pages, string Worst, bool MayLeave, bool No);

/// <summary>A visit in, a PDF out.</summary>
public static class VisitSheet
{
    /// <summary>
    /// Makes the sheet of a visit. Its numbers are those of <c>visit check</c>: both ask the same operations for the same file.
    /// </summary>
    /// <param name="visit">The visit's file.</param>
    /// <param name="order">Which sheet, on what paper.</param>
    /// <returns>The sheet, or the first problem of the file with its place.</returns>
    public static Reading<WrittenSheet> Write(FileNode visit, SheetOrder order)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(order);
        return SheetContents.Of(visit, order).Match(
            content =>
            {
                var (pdf, pages) = order.Reader switch
                {
                    SheetReader.Customer => CustomerSheet.Write(content, order.Paper),
                    SheetReader.File => FileSheet.Write(content, order.Paper),
                };
                return Reading<WrittenSheet>.Of(new WrittenSheet(pdf, pages, FindingSet.Worst(content.Leaving).Word(), content.State.MayLeave, content.No));
            },
            Reading<WrittenSheet>.Failed);
    }
}
