using System.Globalization;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Web.Demo;

/// <summary>The invented workshop's instruments: a balancer with its profile, a torque wrench whose calibration is overdue, a gauge, and a new wrench nobody checked.</summary>
internal static class DemoInstruments
{
    public static void Add(WorkshopStore store, DateTimeOffset now)
    {
        var today = DateOnly.FromDateTime(now.DateTime);
        var balancer = Instrument(InstrumentKind.Balancer, "balancer by the window", "DEMO B-1", today.AddDays(-900));
        Record(balancer, InstrumentRecordKind.Profile, today.AddDays(-400), null, """
            {"distanceUnit": "cm", "distanceZero": "0 mm", "weightPlaces": {"innerClip": {"radial": "3 mm", "axial": "-4 mm"}, "outerClip": {"radial": "3 mm", "axial": "4 mm"}, "outerAdhesive": {"radial": "-22 mm", "axial": "-45 mm"}}, "displayStep": "1 g", "displayHidesBelow": "4 g"}
            """, "T3");
        Record(balancer, InstrumentRecordKind.OutsideCalibration, today.AddDays(-250), today.AddDays(115), """
            {"kind": "balancer", "by": "invented laboratory", "certificate": "DEMO 0310", "permitted": "2 g", "points": [{"reference": "30 g", "shown": "31 g"}, {"reference": "60 g", "shown": "61 g"}, {"reference": "100 g", "shown": "99 g"}]}
            """, "T3");
        Record(balancer, InstrumentRecordKind.RepeatSpins, today.AddDays(-60), null, """
            {"planes": {"inner": {"radius": "200 mm"}, "outer": {"radius": "200 mm"}}, "repeat": {"limit": "1.5 g", "spins": [
            {"inner": {"mass": "22 g", "angle": 320}, "outer": {"mass": "15 g", "angle": 140}}, {"inner": {"mass": "22 g", "angle": 319}, "outer": {"mass": "16 g", "angle": 140}},
            {"inner": {"mass": "21 g", "angle": 320}, "outer": {"mass": "15 g", "angle": 142}}, {"inner": {"mass": "22 g", "angle": 321}, "outer": {"mass": "15 g", "angle": 138}},
            {"inner": {"mass": "22 g", "angle": 320}, "outer": {"mass": "15 g", "angle": 140}}, {"inner": {"mass": "21 g", "angle": 320}, "outer": {"mass": "15 g", "angle": 139}},
            {"inner": {"mass": "22 g", "angle": 319}, "outer": {"mass": "15 g", "angle": 141}}, {"inner": {"mass": "23 g", "angle": 320}, "outer": {"mass": "14 g", "angle": 140}},
            {"inner": {"mass": "22 g", "angle": 320}, "outer": {"mass": "15 g", "angle": 140}}, {"inner": {"mass": "22 g", "angle": 321}, "outer": {"mass": "15 g", "angle": 140}}]}}
            """, "T3");
        Record(balancer, InstrumentRecordKind.Note, today.AddDays(-40), null, """{"text": "New clamping nut; the old one ran on stiffly."}""", "T2");

        var wrench = Instrument(InstrumentKind.TorqueWrench, "wrench 1", "DEMO W-1, 40 to 200 N·m", today.AddDays(-800));
        Record(wrench, InstrumentRecordKind.OutsideCalibration, today.AddDays(-395), today.AddDays(-30), """
            {"kind": "torque wrench", "by": "invented laboratory", "certificate": "DEMO 0277", "stated": "passed", "points": [{"reference": "39.2 N·m", "shown": "40 N·m"}, {"reference": "118.3 N·m", "shown": "120 N·m"}, {"reference": "202 N·m", "shown": "200 N·m"}]}
            """, "T3");

        Instrument(InstrumentKind.TorqueWrench, "wrench 2", "DEMO W-2, 60 to 320 N·m", today.AddDays(-6));

        var gauge = Instrument(InstrumentKind.PressureGauge, "gauge of bay 2", "DEMO G-4", today.AddDays(-500));
        Record(gauge, InstrumentRecordKind.Comparison, today.AddDays(-21), today.AddDays(70), """
            {"kind": "pressure gauge", "by": "T3, against the shop's reference gauge", "permitted": "8 kPa", "points": [{"reference": "200 kPa", "shown": "203 kPa"}, {"reference": "300 kPa", "shown": "302 kPa"}]}
            """, "T3");

        Record(wrench, InstrumentRecordKind.Profile, today.AddDays(-395), null, """{"least": "40 N·m", "most": "200 N·m"}""", "T3");
        var lift = Instrument(InstrumentKind.Lift, "two-post lift of bay 1", "DEMO L-1", today.AddDays(-700));
        Record(lift, InstrumentRecordKind.Inspection, today.AddDays(-200), today.AddDays(165), """{"kind": "lift", "by": "invented lift inspector", "stated": "passed"}""", "T3");
        var stands = Instrument(InstrumentKind.Stands, "stands A", "DEMO S-A, 3 t a pair", today.AddDays(-700));
        Record(stands, InstrumentRecordKind.Inspection, today.AddDays(-400), today.AddDays(-35), """{"kind": "stands", "by": "T3", "stated": "passed"}""", "T3");
        var cage = Instrument(InstrumentKind.Cage, "cage by the door", "DEMO C-1", today.AddDays(-90));
        Record(cage, InstrumentRecordKind.Inspection, today, today.AddDays(1), """{"kind": "inflation cage", "by": "T2", "stated": "passed"}""", "T2");

        Guid Instrument(InstrumentKind kind, string name, string identification, DateOnly from)
        {
            var id = Guid.CreateVersion7(now);
            return Kept(store.Instruments.Add(id, kind, new InstrumentDetails(name, identification, from, null), By("T3", from)));
        }

        void Record(Guid id, InstrumentRecordKind kind, DateOnly on, DateOnly? due, string body, string by) =>
            Kept(store.Instruments.Record(id, new NewInstrumentRecord(Guid.CreateVersion7(now), kind, on, due, body.Trim(), null), today, By(by, on)));

        Recorder By(string name, DateOnly on) => new(name, name == "T3" ? Role.Instructor : Role.Technician, new DateTimeOffset(on.ToDateTime(new TimeOnly(10, 15)), now.Offset));

        static Guid Kept(Measures.Reading<StoredInstrument> stored) => stored.Match(
            s => s.Instrument.Id,
            problem => throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"The invented workshop records what may not stand: {problem.Where}: {problem.Message}")));
    }
}
