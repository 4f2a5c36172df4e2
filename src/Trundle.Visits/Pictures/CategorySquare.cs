using Trundle.Engine.Findings;

namespace Trundle.Visits.Pictures;

/// <summary>
/// The square of a category, hatched as on a drawing: empty, single hatch, question mark, cross hatch, solid with a bar. It never stands alone:
/// the word is written beside it, so it is hidden from a screen reader.
/// </summary>
public static class CategorySquare
{
    /// <summary>The square as a picture of its own, 20 by 20.</summary>
    public static string Draw(Category category) =>
        $"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">{Inside(category)}</svg>""";

    /// <summary>The words of a category on pages: what the contract calls 'none' reads 'no deficiency'.</summary>
    public static string Words(Category category) => category == Category.None ? "no deficiency" : category.Word();

    /// <summary>The square's lines within another drawing, from 0, 0 to 20, 20.</summary>
    internal static string Inside(Category category) => category switch
    {
        Category.None => """<rect x="1" y="1" width="18" height="18" fill="none" stroke="var(--ink,#1c2430)" stroke-width="1.75"/>""",
        Category.Minor => """<path d="M1.5 8.5l7-7M1.5 14.5l13-13M3 19L19 3M8.5 18.5l10-10M14.5 18.5l4-4" stroke="var(--minor,#0072b2)" stroke-width="1.5" fill="none"/><rect x="1" y="1" width="18" height="18" fill="none" stroke="var(--minor,#0072b2)" stroke-width="1.75"/>""",
        Category.Refer => """<rect x="1" y="1" width="18" height="18" fill="var(--refer,#cc79a7)" fill-opacity="0.22" stroke="var(--refer-line,#9c4a78)" stroke-width="1.75"/><path d="M7 7.4a3 3 0 1 1 4.2 2.8c-.9.4-1.2.9-1.2 1.9v.5" stroke="var(--refer-line,#9c4a78)" stroke-width="1.9" fill="none" stroke-linecap="round"/><circle cx="10" cy="15.4" r="1.25" fill="var(--refer-line,#9c4a78)"/>""",
        Category.Major => """<path d="M1.5 8.5l7-7M1.5 14.5l13-13M3 19L19 3M8.5 18.5l10-10M14.5 18.5l4-4M11.5 1.5l7 7M5.5 1.5l13 13M1 3l16 16M1.5 8.5l10 10M1.5 14.5l4 4" stroke="var(--major,#d55e00)" stroke-width="1.4" fill="none"/><rect x="1" y="1" width="18" height="18" fill="none" stroke="var(--major,#d55e00)" stroke-width="1.75"/>""",
        Category.Dangerous => """<rect x="1" y="1" width="18" height="18" fill="#d55e00" stroke="var(--ink,#1c2430)" stroke-width="1.75"/><rect x="3.5" y="8" width="13" height="4" fill="#1c2430"/>""",
    };
}
