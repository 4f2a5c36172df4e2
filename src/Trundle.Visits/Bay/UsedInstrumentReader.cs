using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Instruments;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Bay;

/// <summary>Reads <c>work.instruments</c>: the name of each instrument that was used, and its record as it stood then.</summary>
internal static class UsedInstrumentReader
{
    private static readonly (string, InstrumentVerdict)[] Verdicts = [.. InstrumentVerdictWords.All.Select(v => (v.Word(), v))];

    public static IReadOnlyList<UsedInstrument> Read(FileObject work)
    {
        if (work.Object("instruments") is not { } o)
        {
            return [];
        }

        var standing = o.Object("standing");
        var used = new List<UsedInstrument>();
        foreach (var use in InstrumentUse.All)
        {
            var name = o.Text(use.Key);
            var record = standing?.Object(use.Key);
            var read = record is null ? new UsedInstrument(use, name ?? "", false) : Standing(use, name ?? "", record);
            if (name is not null)
            {
                used.Add(read);
            }
        }

        standing?.Done();
        o.Done();
        return used;
    }

    private static UsedInstrument Standing(InstrumentUse use, string name, FileObject o)
    {
        var used = new UsedInstrument(use, name, true)
        {
            Checked = o.Date("checked"),
            Verdict = o.Word("verdict", Verdicts),
            Due = o.Date("due"),
            Wrench = use.Kind == InstrumentKind.TorqueWrench ? FixingsOperation.ReadWrench(o, "least", "most", "deviation") : null,
        };
        o.Done();
        return used;
    }
}
