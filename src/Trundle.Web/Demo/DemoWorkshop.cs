using System.Globalization;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Demo;

/// <summary>An invented workshop: six people, five vehicles on different legs, one handed back. Nobody and nothing in it is real.</summary>
public static class DemoWorkshop
{
    /// <summary>Fills a store in which there is nobody and nothing yet; leaves any other as it is.</summary>
    /// <returns>True where it was filled.</returns>
    public static bool Fill(WorkshopStore store, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(clock);
        if (store.People.All(withThoseWhoLeft: true).Count > 0)
        {
            return false;
        }

        foreach (var (name, role, habits) in new[]
        {
            ("T1", Role.Desk, UnitHabits.Metric),
            ("T2", Role.Technician, UnitHabits.Metric),
            ("T3", Role.Instructor, UnitHabits.Metric),
            ("T4", Role.Trainee, UnitHabits.Metric),
            ("T5", Role.Owner, new UnitHabits("bar", "mm", "N·m", "g")),
            ("T6", Role.Technician, new UnitHabits("psi", "32nds", "lbf·ft", "oz")),
        })
        {
            store.People.Add(name, role, habits);
        }

        var now = clock.GetLocalNow();
        DemoInstruments.Add(store, now);
        DemoStock.Add(store, now.AddDays(-30));
        DemoKeeping.Add(store, now);
        RedCoupe(store, now.AddDays(-1).AddHours(-5));
        GreySaloon(store, now.AddHours(-4));
        BlueHatchback(store, now.AddHours(-3), now);
        WhiteVan(store, now.AddHours(-2), now);
        YellowLorry(store, now.AddMinutes(-80), now);
        GreenEstate(store, now.AddMinutes(-25), now);
        return true;
    }

    /// <summary>Handed back yesterday: two worn tyres renewed; one of the old ones, and a bent wheel, are condemned.</summary>
    private static void RedCoupe(WorkshopStore store, DateTimeOffset at)
    {
        var visit = new DemoVisit(store, "T1", at)
            .Enter("vehicle.name", "Red coupé, DEMO 44").Enter("vehicle.odometer", "61350 km").Enter("vehicle.drive", "front").Enter("rules", "uk")
            .Enter("vehicle.complaint", "worn in front, and it hums").Enter("work.bay", "1").Enter("work.promised", Promised(at, 4))
            .Axle(1, true, "195/65 R15 91H", "230 kPa", "250 kPa", 5, "bolt", "M14x1.5", "120 N·m", "ball")
            .Axle(2, false, "195/65 R15 91H", "230 kPa", "250 kPa", 5, "bolt", "M14x1.5", "120 N·m", "ball")
            .Then("T2", 12);
        Car(visit, "C", "195/65 R15 91H", "228 kPa", [("1L", 2.1, 2.0, 1.9), ("1R", 2.0, 2.1, 2.2), ("2L", 5.6, 5.8, 5.7), ("2R", 5.5, 5.8, 5.6)], "2423");
        visit.Enter("fitted.1L.tyre.condemned", "true")
            .Then("T2", 8).Jobs("none", ("1L", WheelJob.Demount), ("1R", WheelJob.Demount), ("2L", WheelJob.StaysOn), ("2R", WheelJob.StaysOn));
        foreach (var position in (string[])["1L", "1R"])
        {
            visit.Enter($"work.renewed.{position}.tyre.id", $"N-{position}").Enter($"work.renewed.{position}.tyre.marking", "195/65 R15 91H").Enter($"work.renewed.{position}.tyre.tin", "1AB CDEFHJ 0226")
                .Enter($"work.renewed.{position}.tread.inner.0", "7.9 mm").Enter($"work.renewed.{position}.tread.centre.0", "8.0 mm").Enter($"work.renewed.{position}.tread.outer.0", "7.9 mm");
        }

        visit.Then("T2", 5).Passed(Leg.OffTheCar, "vehicle", WheelJob.Demount, "", 0, "");
        foreach (var position in (string[])["1L", "1R"])
        {
            visit.Then("T2", 20).Passed(Leg.OffTheCar, position, WheelJob.Demount, "230 kPa", 5, "120 N·m")
                .Then("T2", 4).Passed(Leg.Refit, position, WheelJob.Demount, "230 kPa", 5, "120 N·m");
        }

        visit.Then("T2", 5).Passed(Leg.Prove, "vehicle", WheelJob.Demount, "", 0, "");
        foreach (var position in (string[])["1L", "1R"])
        {
            visit.Passed(Leg.Prove, position, WheelJob.Demount, "230 kPa", 5, "120 N·m");
        }

        visit.Enter("work.lockingKey.in", "glove box").Enter("work.lockingKey.out", "back in the glove box")
            .Enter("work.stock.0.kind", "tyre").Enter("work.stock.0.item", DemoStock.Tyre).Enter("work.stock.0.count", "2")
            .Enter("work.stock.1.kind", "valve").Enter("work.stock.1.item", DemoStock.Valve).Enter("work.stock.1.count", "2")
            .Enter("work.scrap.tyres.0.tin", "1AB CDEFHJ 2423").Enter("work.scrap.tyres.0.words", "195/65 R15 91H, from the front left")
            .Enter("work.scrap.tyres.1.tin", "1AB CDEFHJ 2423").Enter("work.scrap.tyres.1.words", "195/65 R15 91H, from the front right")
            .Enter("work.scrap.leadWeights", "60 g").Enter("work.scrap.note", "DEMO WN 12");
        visit.Enter("work.watch", "Have the fixings checked after 50 to 100 km.").Then("T2", 6).Enter("work.handBack.by", "T2").Send();
    }

    /// <summary>On its last leg: lowered, and two wheels not yet finally tightened.</summary>
    private static void GreySaloon(WorkshopStore store, DateTimeOffset at)
    {
        var visit = new DemoVisit(store, "T1", at)
            .Enter("vehicle.name", "Grey saloon, DEMO 22").Enter("vehicle.odometer", "22900 mi").Enter("vehicle.drive", "rear").Enter("rules", "uk")
            .Enter("vehicle.complaint", "steering wheel trembles on the motorway").Enter("work.bay", "1").Enter("work.promised", Promised(at, 4.5))
            .Axle(1, false, "225/45 R17 91W", "35 psi", "38 psi", 5, "nut", "M12x1.5", "80 lbf·ft", "cone")
            .Axle(2, true, "225/45 R17 91W", "35 psi", "38 psi", 5, "nut", "M12x1.5", "80 lbf·ft", "cone")
            .Then("T6", 15);
        Car(visit, "G", "225/45 R17 91W", "34 psi", [("1L", 4.8, 5.0, 4.9), ("1R", 4.7, 5.0, 4.8), ("2L", 4.1, 4.4, 4.2), ("2R", 4.0, 4.3, 4.2)], "1824", "7J x 17", "cone");
        visit.Then("T6", 6).Jobs("none", ("1L", WheelJob.Balance), ("1R", WheelJob.Balance), ("2L", WheelJob.StaysOn), ("2R", WheelJob.StaysOn))
            .Then("T6", 4).Passed(Leg.OffTheCar, "vehicle", WheelJob.Balance, "", 0, "");
        string[] clips = ["0.25 oz", "0.5 oz", "0.75 oz", "1 oz", "1.25 oz", "1.5 oz"];
        visit.Balance("1L", "110 mm", "17 in", "7 in", ("1.25 oz", 115), ("0.75 oz", 290), clips).Balance("1R", "110 mm", "17 in", "7 in", ("0.5 oz", 40), ("1 oz", 210), clips);
        foreach (var position in (string[])["1L", "1R"])
        {
            visit.Then("T6", 14).Passed(Leg.OffTheCar, position, WheelJob.Balance, "35 psi", 5, "80 lbf·ft")
                .Then("T6", 3).Passed(Leg.Refit, position, WheelJob.Balance, "35 psi", 5, "80 lbf·ft");
        }

        visit.Then("T6", 3).Passed(Leg.Prove, "vehicle", WheelJob.Balance, "", 0, "", "lowered").Send();
    }

    /// <summary>Off the car: the front left tyre is being demounted, the front right one is mounted and waits for its air.</summary>
    private static void BlueHatchback(WorkshopStore store, DateTimeOffset at, DateTimeOffset now)
    {
        var visit = new DemoVisit(store, "T1", at)
            .Enter("vehicle.name", "Blue hatchback, DEMO 07").Enter("vehicle.odometer", "48200 km").Enter("vehicle.drive", "front").Enter("rules", "uk")
            .Enter("vehicle.complaint", "shakes at 70 mph").Enter("work.bay", "2").Enter("work.promised", Promised(now, 2)).Enter("work.contact", "the desk has the number")
            .Axle(1, true, "195/65 R15 91H", "230 kPa", "250 kPa", 5, "bolt", "M14x1.5", "120 N·m", "ball")
            .Axle(2, false, "195/65 R15 91H", "230 kPa", "250 kPa", 5, "bolt", "M14x1.5", "120 N·m", "ball")
            .Enter("vehicle.axleLoads.0", "890 kg").Enter("vehicle.axleLoads.1", "760 kg")
            .Enter("arrival.lamps.tyre-pressure", "true").Enter("arrival.lamps.anti-lock-brakes", "false").Enter("arrival.lamps.brake", "false")
            .Enter("arrival.damage.0.place", "front left wing").Enter("arrival.damage.0.words", "scratch to the primer, a hand long")
            .Enter("work.agreed.0", "two new tyres in front").Enter("work.agreed.1", "balance of four wheels").Enter("work.agreement.signed", "P. Driver")
            .Then("T4", 18);
        Car(visit, "A", "195/65 R15 91H", "225 kPa", [("1L", 1.4, 3.9, 4.2), ("1R", 1.9, 4.1, 4.2), ("2L", 5.6, 5.8, 5.7), ("2R", 5.5, 5.7, 5.6)], "2220");
        visit.Then("T2", 9).Jobs("none", ("1L", WheelJob.Demount), ("1R", WheelJob.Demount), ("2L", WheelJob.Balance), ("2R", WheelJob.Balance))
            .Then("T3", 2).Permitted("T4", HazardousAct.Lift, HazardousAct.Demount)
            .Then("T4", 4).Passed(Leg.OffTheCar, "vehicle", WheelJob.Demount, "", 0, "")
            .Then("T4", 10).Passed(Leg.OffTheCar, "1L", WheelJob.Demount, "230 kPa", 5, "120 N·m", "core-out")
            .Then("T4", 10).Passed(Leg.OffTheCar, "1R", WheelJob.Demount, "230 kPa", 5, "120 N·m", "clamps-released")
            .Send();
    }

    /// <summary>Looked over, and not yet planned: a hole near the shoulder waits for a person's decision.</summary>
    private static void WhiteVan(WorkshopStore store, DateTimeOffset at, DateTimeOffset now)
    {
        var visit = new DemoVisit(store, "T1", at)
            .Enter("vehicle.name", "White van, DEMO 31").Enter("vehicle.class", "van").Enter("vehicle.odometer", "103700 km").Enter("vehicle.drive", "front").Enter("rules", "eu")
            .Enter("vehicle.complaint", "loses air behind on the right").Enter("work.bay", "3").Enter("work.promised", Promised(now, 4))
            .Axle(1, true, "205/65 R16 C 107/105T", "340 kPa", "380 kPa", 5, "bolt", "M14x1.5", "160 N·m", "cone")
            .Axle(2, false, "205/65 R16 C 107/105T", "380 kPa", "430 kPa", 5, "bolt", "M14x1.5", "160 N·m", "cone")
            .Then("T2", 20);
        Car(visit, "V", "205/65 R16 C 107/105T", "335 kPa", [("1L", 5.0, 5.2, 5.1), ("1R", 5.1, 5.2, 4.9), ("2L", 6.2, 6.3, 6.2), ("2R", 6.0, 6.2, 6.1)], "3123", "6.5J x 16", "cone");
        visit.Enter("fitted.2L.pressure.value", "378 kPa").Enter("fitted.2R.pressure.value", "290 kPa")
            .Enter("fitted.2R.damage.0.kind", "puncture").Enter("fitted.2R.damage.0.place", "shoulder").Enter("fitted.2R.damage.0.size", "4 mm")
            .Send();
    }

    /// <summary>Being looked over: a lorry with dual wheels behind, of which two are entered.</summary>
    private static void YellowLorry(WorkshopStore store, DateTimeOffset at, DateTimeOffset now)
    {
        const string size = "265/70 R19.5 140/138M";
        var visit = new DemoVisit(store, "T1", at)
            .Enter("vehicle.name", "Yellow lorry, DEMO 58").Enter("vehicle.class", "goods over 3500 kg").Enter("vehicle.odometer", "287400 km").Enter("vehicle.drive", "rear").Enter("rules", "eu")
            .Enter("vehicle.complaint", "yearly look at the wheels").Enter("work.bay", "4").Enter("work.promised", Promised(now, 26))
            .Axle(1, false, size, "800 kPa", "850 kPa", 8, "nut", "M20x1.5", "450 N·m", "flat")
            .Axle(2, true, size, "750 kPa", "800 kPa", 8, "nut", "M20x1.5", "450 N·m", "flat", dual: true)
            .Then("T3", 30);
        visit.Tyre("1L", "L-1L", size, "1AB CDEFHJ 1122", "790 kPa", "9.1 mm", "9.4 mm", "9.0 mm")
            .Tyre("1R", "L-1R", size, "1AB CDEFHJ 1122", "800 kPa", "9.2 mm", "9.4 mm", "9.1 mm")
            .Send();
    }

    /// <summary>Just in, and still outside.</summary>
    private static void GreenEstate(WorkshopStore store, DateTimeOffset at, DateTimeOffset now) =>
        new DemoVisit(store, "T1", at)
            .Enter("vehicle.name", "Green estate, DEMO 12").Enter("vehicle.complaint", "summer to winter, own wheels in the back").Enter("work.promised", Promised(now, 24))
            .Send();

    private static void Car(DemoVisit visit, string ids, string marking, string pressure, (string Position, double InnerMm, double CentreMm, double OuterMm)[] tyres, string weekAndYear, string rim = "6J x 15", string seat = "ball")
    {
        foreach (var (position, innerMm, centreMm, outerMm) in tyres)
        {
            visit.Then(position == "1L" ? "T2" : "T4", 2)
                .Tyre(position, $"{ids}-{position}", marking, $"1AB CDEFHJ {weekAndYear}", pressure, Depth(innerMm), Depth(centreMm), Depth(outerMm))
                .Wheel(position, $"W{ids}-{position}", rim, "alloy", 5, "57.1 mm", "5 x 112 mm", seat);
        }
    }

    private static string Depth(double mm) => string.Create(CultureInfo.InvariantCulture, $"{mm:F1} mm");

    /// <summary>Some hours on, on the quarter hour, as people promise.</summary>
    private static string Promised(DateTimeOffset from, double hours)
    {
        var time = from.AddHours(hours);
        return time.AddMinutes(-(time.Minute % 15)).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }
}
