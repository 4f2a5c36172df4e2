using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Instruments;

namespace Trundle.Web.Visits;

/// <summary>The workshop's instruments beside a visit: the bay needs them with no network too.</summary>
internal static class InstrumentList
{
    /// <summary>The answer with the instruments that are not out of use for good.</summary>
    public static JsonObject WithInstruments(this JsonObject answer, WorkshopStore store)
    {
        answer["instruments"] = new JsonArray([.. store.Instruments.All().Where(i => i.Instrument.OutOfUseFrom is null).Select(i => (JsonNode?)InstrumentJson.Of(i.Instrument))]);
        return answer;
    }
}
