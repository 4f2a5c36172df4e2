using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>What each fixing of a wheel got at one stage, as it was recorded.</summary>
/// <param name="Stage">Which stage, from 0.</param>
/// <param name="Torques">By the fixing's number.</param>
/// <param name="Wrench">The wrench, or null.</param>
/// <param name="By">Who recorded it, or null where the file does not say.</param>
public sealed record StageTorques(int Stage, IReadOnlyDictionary<int, Torque> Torques, string? Wrench, string? By)
{
    /// <summary>True for the path of one stage's torques in a visit.</summary>
    internal static bool IsPath(string path) => path.StartsWith("work.tightening.", StringComparison.Ordinal)
        && path.Split('.') is [_, _, _, "torques", var stage] && stage.StartsWith("stage-", StringComparison.Ordinal);

    /// <summary>Reads the stages under <c>torques</c>.</summary>
    internal static IReadOnlyList<StageTorques> Read(FileObject o)
    {
        var stages = new List<StageTorques>();
        for (var i = 0; i < TighteningRecord.MostStages; i++)
        {
            if (o.Object(string.Create(CultureInfo.InvariantCulture, $"stage-{i + 1}")) is not { } stage)
            {
                continue;
            }

            var torques = new Dictionary<int, Torque>();
            for (var fixing = 1; fixing <= 20; fixing++)
            {
                if (stage.Quantity<Torque>(fixing.ToString(CultureInfo.InvariantCulture), "N·m", Torque.FromNewtonMetres(1), Torque.FromNewtonMetres(2000)) is { } torque)
                {
                    torques[fixing] = torque;
                }
            }

            var (wrench, by) = (stage.Text("wrench"), stage.Text("by"));
            stage.Done();
            if (torques.Count > 0)
            {
                stages.Add(new StageTorques(i, torques, wrench, by));
            }
        }

        o.Done();
        return stages;
    }
}
