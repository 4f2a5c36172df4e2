using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>What keeps a wrench from setting a torque: its scale, and what its last check found.</summary>
public static class WrenchFindings
{
    /// <summary>Why a wrench is refused for a setting, or null: no mark of its scale says this torque.</summary>
    /// <param name="wrench">The wrench, or null where nothing is known of it.</param>
    /// <param name="setting">What would be set on it.</param>
    /// <source>ISO 6789-1:2017 (read as excerpt): the range begins at the lowest marked value</source>
    public static string? Refusal(TorqueWrench? wrench, Torque setting) => wrench is null ? null : wrench.PlaceOf(setting) switch
    {
        ScalePlace.Within or ScalePlace.LowPart => null,
        ScalePlace.BelowLowest => $"{setting.Text("N·m", 1)} lies below the lowest mark of this wrench, {wrench.Least!.Value.Text("N·m", 0)}: take a smaller wrench.",
        ScalePlace.AboveHighest => $"{setting.Text("N·m", 1)} lies above the highest mark of this wrench, {wrench.Most!.Value.Text("N·m", 0)}: take a larger wrench. Never add a tube or guess beyond the scale.",
    };

    /// <summary>The findings of a wrench at the last stage, where the torque is the maker's.</summary>
    /// <source>ISO 6789:2003 as restated in a hand-tool maker's calibration manual; ISO 6789-1:2017 for the range</source>
    public static IEnumerable<Finding> Of(FixingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question is not { Wrench: { } wrench, Fixings.Torque: { } torque })
        {
            yield break;
        }

        var setting = question.Adapter?.Setting(torque) ?? torque;
        if (Refusal(wrench, setting) is { } why)
        {
            var mark = wrench.PlaceOf(setting) == ScalePlace.AboveHighest ? wrench.Most!.Value : wrench.Least!.Value;
            yield return new Finding("fixings.wrench-scale", Category.Major, null, Amount.Of(setting, "N·m", 1), new Limit(Amount.Of(mark, "N·m", 0), Source.Entered("the wrench's scale, as entered")), Source.CommonPractice, why);
        }
        else if (wrench.PlaceOf(setting) == ScalePlace.LowPart)
        {
            var part = Figures.Of("fixings.wrench-low-part");
            yield return new Finding("fixings.wrench-low", Category.Minor, null, Amount.Of(setting, "N·m", 1), new Limit(Amount.Of(wrench.Most!.Value * (part.Value / 100), "N·m", 0), part.Source), part.Source,
                $"This lies below {Quantity.Number(part.Value, 0)} % of the wrench's highest mark, where its calibration does not look: take a smaller wrench.");
        }

        if (wrench.IsOff(setting))
        {
            var permitted = PointCheck.OfTorqueWrench(setting);
            yield return new Finding("fixings.wrench-off", Category.Major, null, Amount.Word(Signed(wrench.WorstPercent!.Value)), new Limit(Amount.Number(permitted.Percent!.Value, "%", 0), permitted.Source), permitted.Source,
                "The wrench's last check found it too far off: take another and set every fixing again. Never correct a setting by the deviation.");
        }
    }

    internal static string Signed(double percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:+0.0;−0.0;0.0} %");
}
