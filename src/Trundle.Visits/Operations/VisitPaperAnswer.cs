using System.Text.Json.Nodes;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;

namespace Trundle.Visits.Operations;

/// <summary>The visit's paper in the answer of <c>visit check</c>: what came, what was agreed and declined, what was used, what went out. Whom to call is left out.</summary>
internal static class VisitPaperAnswer
{
    /// <summary>The keys, each only where something was entered.</summary>
    public static IEnumerable<(string Key, JsonNode? Answer)> Of(VisitState state)
    {
        if (state.Arrived.Vehicle.Vin is { } vin)
        {
            yield return ("vin", new JsonObject
            {
                ["text"] = vin.Text,
                ["checkDigitRead"] = vin.Read.ToString(),
                ["checkDigitComputed"] = vin.CheckDigit.ToString(),
                ["agrees"] = vin.Agrees,
                ["note"] = vin.Note,
                ["source"] = Engine.Vehicles.Vin.Source.Text,
                ["status"] = Engine.Vehicles.Vin.Source.StatusText,
            });
        }

        if (state.Entered.Arrival is var arrival && arrival != ArrivalRecord.Nothing)
        {
            yield return ("arrival", new JsonObject
            {
                ["damage"] = AnswerJson.List(arrival.Damage.Select(d => (JsonNode?)new JsonObject { ["place"] = d.Place, ["words"] = d.Words, ["photos"] = AnswerJson.List(d.Photos.Select(p => p.ToString("D"))) })),
                ["lampsLit"] = AnswerJson.List(arrival.Lit),
                ["lampsNotLit"] = AnswerJson.List(arrival.Dark),
            });
        }

        var paper = state.Work.Paper;
        if (paper.LockingKey is { } key)
        {
            yield return ("lockingKey", new JsonObject { ["in"] = key.In, ["out"] = key.Out, ["missing"] = key.Missing });
        }

        if (paper.Agreed.Count > 0 || paper.AgreementSigned is not null)
        {
            yield return ("agreed", new JsonObject { ["work"] = AnswerJson.List(paper.Agreed), ["signed"] = paper.AgreementSigned, ["at"] = paper.AgreementAt });
        }

        if (paper.Declined.Count > 0)
        {
            yield return ("declined", AnswerJson.List(paper.Declined.Select(d => (JsonNode?)new JsonObject { ["what"] = d.What, ["risk"] = d.Risk, ["signed"] = d.Signed, ["at"] = d.At })));
        }

        if (paper.Stock.Count > 0)
        {
            yield return ("stockUsed", AnswerJson.List(paper.Stock.Select(s => (JsonNode?)new JsonObject { ["kind"] = s.Kind.Word(), ["item"] = s.Item, ["massGrams"] = s.Mass?.Grams, ["count"] = s.Count })));
        }

        if (!paper.Scrap.Empty)
        {
            yield return ("scrap", new JsonObject
            {
                ["tyres"] = AnswerJson.List(paper.Scrap.Tyres.Select(t => (JsonNode?)new JsonObject { ["tin"] = t.Tin, ["words"] = t.Words })),
                ["leadWeightsGrams"] = paper.Scrap.LeadWeights?.Grams,
                ["note"] = paper.Scrap.Note,
            });
        }
    }

    /// <summary>The same in words.</summary>
    public static IEnumerable<string> Lines(VisitState state)
    {
        if (state.Arrived.Vehicle.Vin is { } vin)
        {
            yield return $"VIN {vin.Text}";
            if (vin.Note is { } note)
            {
                yield return $"Note: {note} [{Engine.Vehicles.Vin.Source.Text}, {Engine.Vehicles.Vin.Source.StatusText}]";
            }
        }

        if (state.Entered.Arrival.Lit is { Count: > 0 } lit)
        {
            yield return $"Lit before work: {string.Join(", ", lit)}";
        }

        foreach (var damage in state.Entered.Arrival.Damage)
        {
            yield return $"Damaged on arrival: {damage.Place}{(damage.Words is { } words ? $", {words}" : "")}";
        }

        if (state.Work.Paper.LockingKey is { In: { } from } key)
        {
            yield return $"Locking key: came in ({from}); {(key.Out is { } to ? $"now: {to}" : "nobody said where it is now")}";
        }

        foreach (var declined in state.Work.Paper.Declined)
        {
            yield return $"Declined: {declined.What.TrimEnd('.')}. If it is left: {declined.Risk.TrimEnd('.')}. {(declined.Signed is { } signed ? $"Signed: {signed}{(declined.At is { } at ? $", {at}" : "")}" : "Not signed")}";
        }
    }
}
