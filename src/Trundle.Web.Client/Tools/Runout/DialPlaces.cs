using System.Globalization;
using Trundle.Measures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools.Runout;

/// <summary>One place around at which the dial is read.</summary>
/// <param name="Field">Where its reading is entered.</param>
/// <param name="AngleField">Where its angle is entered, or null where even places tell it.</param>
/// <param name="Degrees">The angle from the valve, clockwise as seen from outside; null where it is still to come.</param>
/// <param name="Typed">The reading as typed, or null.</param>
public sealed record DialPlace(string Field, string? AngleField, double? Degrees, string? Typed);

/// <summary>The places around of one run of the dial, as they stand in the form.</summary>
public static class DialPlaces
{
    /// <summary>How many places are offered.</summary>
    public static IReadOnlyList<int> Offered { get; } = [6, 8, 12, 16, 24];

    /// <summary>The places under a path such as <c>readings</c>: those entered, and the next ones of so many evenly around.</summary>
    /// <param name="form">The form.</param>
    /// <param name="at">The path of the list.</param>
    /// <param name="around">How many evenly around, or null for places with an angle of their own.</param>
    public static IReadOnlyList<DialPlace> Of(ToolForm form, string at, int? around)
    {
        ArgumentNullException.ThrowIfNull(form);
        var count = form.Count(at);
        if (IsPlainList(form, at))
        {
            var first = Degrees(form[$"{at[..^"readings".Length]}first"]) ?? 0;
            var sense = form[$"{at[..^"readings".Length]}sense"] == "anticlockwise" ? -1 : 1;
            return [.. Enumerable.Range(0, count).Select(i => new DialPlace(ToolForm.Row(at, i), null, WheelAngle.FromDegrees(first + (sense * 360.0 * i / count)).Degrees, form[ToolForm.Row(at, i)]))];
        }

        return [.. Enumerable.Range(0, Math.Max(count, around ?? count + 1)).Select(i =>
        {
            var row = ToolForm.Row(at, i);
            return new DialPlace($"{row}.value", $"{row}.angle", Degrees(form[$"{row}.angle"]) ?? (around is { } n ? 360.0 * i / n : null), form[$"{row}.value"]);
        })];
    }

    /// <summary>True where the readings stand without angles, evenly around.</summary>
    public static bool IsPlainList(ToolForm form, string at)
    {
        ArgumentNullException.ThrowIfNull(form);
        return form[$"{at}.0"] is not null;
    }

    /// <summary>How many evenly around the entered angles are of; null where they are not even, or too few to tell.</summary>
    public static int? Around(ToolForm form, string at)
    {
        ArgumentNullException.ThrowIfNull(form);
        var angles = Enumerable.Range(0, form.Count(at)).Select(i => Degrees(form[$"{ToolForm.Row(at, i)}.angle"])).OfType<double>().ToList();
        return angles.Count < 2 ? null : Offered.Cast<int?>().FirstOrDefault(n => Math.Abs(angles[1] - angles[0] - (360.0 / n!.Value)) < 0.01 && angles.All(a => Math.Abs((a * n.Value / 360) - Math.Round(a * n.Value / 360)) < 0.001));
    }

    /// <summary>An angle as it is entered.</summary>
    public static string Text(double degrees) => degrees.ToString("0.##", CultureInfo.InvariantCulture);

    private static double? Degrees(string? typed) => typed is not null && Quantity.Read<Angle>(typed, "°") is { IsRead: true } read ? read.Value.Degrees : null;
}
