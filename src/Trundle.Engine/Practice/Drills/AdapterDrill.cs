using Trundle.Engine.Findings;
using Trundle.Engine.Fixings;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>A wrench with an adapter, by the engine's own rule.</summary>
internal static class AdapterDrill
{
    private static readonly int[] Turns = [0, 0, 30, 45, 60, 90];

    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "adapter");
        var wanted = Torque.FromNewtonMetres(stream.Between(9, 18) * 10);
        var adapter = new WrenchAdapter(Length.FromMillimetres(stream.Between(38, 60) * 10), Length.FromMillimetres(stream.Between(40, 120)), Angle.FromDegrees(stream.OneOf(Turns)));
        var setting = adapter.Setting(wanted);
        var delivered = adapter.Delivered(wanted);
        var source = new Source("TM 9-254 figs 45 and 46; NAVEDTRA 14315 figs 3-44 and 3-45", SourceStatus.Read);
        var square = adapter.Turn.Degrees > 89;
        var formula = $"S = T·L/(L + A·cos α) = {wanted.Text("N·m", 0)} · {adapter.WrenchLength.Text("mm", 0)}/({adapter.WrenchLength.Text("mm", 0)} + {adapter.AdapterLength.Text("mm", 0)} · cos {Asking.Text(adapter.Turn.Degrees, 0)}°).";
        return new Drill(DrillKind.Adapter, seed, DrillList.Title(DrillKind.Adapter),
        [
            new("torque by the maker", wanted.Text("N·m", 0)),
            new("grip to drive", adapter.WrenchLength.Text("mm", 0)),
            new("drive to fixing", adapter.AdapterLength.Text("mm", 0)),
            new("adapter's turn from the wrench's line", $"{Asking.Text(adapter.Turn.Degrees, 0)}°"),
        ],
        [
            Asking.Quantity(new("setting", "What to set on the wrench, to 1 %.", 50, true), setting, "N·m", 1, setting.NewtonMetres / 100, source, formula),
            Asking.Quantity(new("delivered", "What the fixing would get with the maker's torque set and no correction, to 1 %.", 30, false), delivered, "N·m", 1, delivered.NewtonMetres / 100, source, "T = S·(L + A·cos α)/L: the adapter lengthens the arm."),
            Asking.Choice(new("square", "Would a correction be needed with the adapter square to the wrench (90°)?", 20, false), Asking.YesNo, key => key == "no", _ => square ? "Here it stands so: the setting is the torque." : "cos 90° is nothing: the arm is not lengthened, so the setting is the torque.", source),
        ]);
    }
}
