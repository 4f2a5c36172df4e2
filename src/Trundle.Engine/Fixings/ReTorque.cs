using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>When the tightening is checked again, after the joint has settled on the road.</summary>
/// <param name="From">Not before this distance.</param>
/// <param name="To">Not after this distance.</param>
/// <param name="Source">Where the distances come from.</param>
public sealed record ReTorque(Length From, Length To, Source Source)
{
    /// <summary>The time after which it is checked where the vehicle only stands, or null where nobody gave one.</summary>
    public Limit? Standing { get; init; }

    /// <summary>The customary distances: a light vehicle's are common practice, a heavy one's are published. A maker's own distance wins.</summary>
    /// <param name="heavy">Goods vehicle over 3 500 kg, bus or its trailer.</param>
    /// <source>DVSA and industry, Careless Torque Costs Lives (2014), for heavy vehicles; common practice for light ones</source>
    public static ReTorque Customary(bool heavy)
    {
        var key = heavy ? "fixings.retorque.heavy" : "fixings.retorque.light";
        var from = Figures.Of($"{key}.from");
        return new ReTorque(from.As<Length>(), Figures.Of($"{key}.to").As<Length>(), from.Source)
        {
            Standing = heavy ? Figures.Of("fixings.retorque.heavy.standing").Limit(0) : null,
        };
    }
}
