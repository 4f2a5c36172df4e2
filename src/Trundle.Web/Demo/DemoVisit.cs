using System.Globalization;
using Trundle.Engine.Fixings;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Procedures;

namespace Trundle.Web.Demo;

/// <summary>Writes one invented visit into a store, entry by entry, as people would have entered it.</summary>
internal sealed class DemoVisit
{
    private readonly WorkshopStore _store;
    private readonly Guid _id = Guid.CreateVersion7();
    private readonly List<Entry> _entries = [];
    private DateTimeOffset _at;
    private string _by;

    public DemoVisit(WorkshopStore store, string by, DateTimeOffset opened)
    {
        (_store, _by, _at) = (store, by, opened);
        var heading = store.Visits.Open(_id, by, opened, DateOnly.FromDateTime(opened.DateTime));
        Enter("work.number", heading.Number).Enter("date", opened.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    /// <summary>Somebody else goes on, some minutes later.</summary>
    public DemoVisit Then(string by, double minutes)
    {
        _by = by;
        _at = _at.AddMinutes(minutes);
        return this;
    }

    public DemoVisit Enter(string field, string typed)
    {
        // People type one field after the other.
        _at = _at.AddSeconds(2);
        _entries.Add(new Entry(Guid.CreateVersion7(_at), field, typed, _by, Role.Trainee, _at));
        return this;
    }

    public DemoVisit Axle(int number, bool driven, string size, string cold, string laden, int fixings, string kind, string thread, string torque, string seat, bool dual = false)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{number - 1}");
        Enter($"{at}.steered", number == 1 ? "true" : "false").Enter($"{at}.driven", driven ? "true" : "false").Enter($"{at}.dual", dual ? "true" : "false");
        Enter($"{at}.placard.size", size).Enter($"{at}.placard.cold", cold).Enter($"{at}.placard.laden", laden);
        Enter($"{at}.fixings.count", fixings.ToString(CultureInfo.InvariantCulture)).Enter($"{at}.fixings.kind", kind).Enter($"{at}.fixings.thread", thread);
        return Enter($"{at}.fixings.torque", torque).Enter($"{at}.fixings.seat", seat).Enter($"{at}.fixings.condition", "dry");
    }

    public DemoVisit Tyre(string position, string id, string marking, string tin, string pressure, string inner, string centre, string outer)
    {
        var at = $"fitted.{position}";
        Enter($"{at}.tyre.id", id).Enter($"{at}.tyre.marking", marking).Enter($"{at}.tyre.tin", tin);
        Enter($"{at}.tread.inner.0", inner).Enter($"{at}.tread.centre.0", centre).Enter($"{at}.tread.outer.0", outer);
        return Enter($"{at}.pressure.value", pressure);
    }

    public DemoVisit Wheel(string position, string id, string rim, string material, int spokes, string bore, string circle, string seat)
    {
        var at = $"fitted.{position}.wheel";
        Enter($"{at}.id", id).Enter($"{at}.rim", rim).Enter($"{at}.material", material).Enter($"{at}.maker", "vehicle");
        if (spokes > 0)
        {
            Enter($"{at}.spokes", spokes.ToString(CultureInfo.InvariantCulture));
        }

        return Enter($"{at}.bore", bore).Enter($"{at}.boltCircle", circle).Enter($"{at}.seat", seat);
    }

    /// <summary>What was set on the balancer, what it showed, and the clips in the drawer.</summary>
    public DemoVisit Balance(string position, string distance, string diameter, string width, (string Mass, int Angle) inner, (string Mass, int Angle) outer, params string[] clips)
    {
        var at = $"fitted.{position}.balance";
        Enter($"{at}.settings.rimDistance", distance).Enter($"{at}.settings.rimDiameter", diameter).Enter($"{at}.settings.rimWidth", width)
            .Enter($"{at}.wheel.rimDiameter", diameter).Enter($"{at}.wheel.rimWidth", width);
        foreach (var (plane, reading) in new[] { ("inner", inner), ("outer", outer) })
        {
            Enter($"{at}.planes.{plane}.kind", "clip").Enter($"{at}.readings.{plane}.mass", reading.Mass).Enter($"{at}.readings.{plane}.angle", reading.Angle.ToString(CultureInfo.InvariantCulture));
        }

        for (var i = 0; i < clips.Length; i++)
        {
            Enter(string.Create(CultureInfo.InvariantCulture, $"{at}.stock.clip.{i}"), clips[i]);
        }

        return this;
    }

    public DemoVisit Jobs(string rotation, params (string Position, WheelJob Job)[] jobs)
    {
        Enter("work.rotation", rotation);
        foreach (var (position, job) in jobs)
        {
            Enter($"work.jobs.{position}", job.Word());
        }

        return this;
    }

    /// <summary>An instructor who stands there permits a trainee what can maim.</summary>
    public DemoVisit Permitted(string trainee, params HazardousAct[] acts)
    {
        for (var i = 0; i < acts.Length; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"{Permission.List}.{i}");
            Enter($"{at}.act", acts[i].Key()).Enter($"{at}.for", trainee).Enter($"{at}.drill", _at.AddDays(-12).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)).Enter($"{at}.protection", "true");
        }

        return this;
    }

    /// <summary>Records every step of a leg at one place as passed, up to and with the last one named.</summary>
    public DemoVisit Passed(Leg leg, string place, WheelJob job, string pressure, int fixings, string torque, string? last = null)
    {
        foreach (var step in Procedure.BuiltIn.On(leg).Select(s => s.Where(Circumstances.Ordinary)).OfType<ProcedureStep>().Where(s => s.PerWheel == (place != "vehicle") && s.Job <= job))
        {
            var field = step.FieldAt(place);
            switch (step.Entry)
            {
                case StepEntry.Repair:
                case StepEntry.Nothing:
                    throw new InvalidOperationException($"The invented workshop records nothing at '{step.Title}'.");
                case StepEntry.Confirm:
                case StepEntry.Text:
                    Enter(field, "done");
                    break;
                case StepEntry.Choice:
                    Enter(field, step.Passing[0]);
                    if (step.Id == "stages")
                    {
                        Stages(place, fixings);
                    }

                    break;
                case StepEntry.Pressure:
                    Enter(field, pressure);
                    break;
                case StepEntry.Torques:
                    for (var i = 1; i <= fixings; i++)
                    {
                        Enter(string.Create(CultureInfo.InvariantCulture, $"{field}.{i}"), torque);
                    }

                    break;
                case StepEntry.Spin:
                    Enter($"{field}.inner.mass", "0 g").Enter($"{field}.inner.angle", "0").Enter($"{field}.outer.mass", "0 g").Enter($"{field}.outer.angle", "0");
                    break;
            }

            if (step.Id == last)
            {
                break;
            }
        }

        return this;
    }

    /// <summary>Every fixing of a wheel at each of the two stages, in the order with the least pull to one side.</summary>
    private void Stages(string position, int fixings)
    {
        foreach (var (percent, stage) in new[] { 50.0, 100 }.Select((p, i) => (p, i)))
        {
            Enter(TighteningRecord.FieldAt(position, stage), TighteningRecord.Text(new RecordedStage(percent, TighteningSequence.For(fixings))));
        }
    }

    /// <summary>Sends it all to the store, in batches as a tablet would.</summary>
    public Guid Send()
    {
        foreach (var batch in _entries.Chunk(VisitStore.MostInBatch))
        {
            var taken = _store.Visits.Append(_id, batch, batch[^1].At).Value;
            if (taken.Refused.Count > 0)
            {
                throw new InvalidOperationException($"The invented workshop enters what may not stand: {taken.Refused[0].Problem.Where}: {taken.Refused[0].Problem.Message}");
            }
        }

        return _id;
    }
}
