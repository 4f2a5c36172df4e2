namespace Trundle.Visits.Tests.Files;

/// <summary>A whole visit's file of an invented vehicle, with every key that the reader knows somewhere in it.</summary>
internal static class InventedVisit
{
    public const string Json = """
        {
          "rules": "uk",
          "date": "2026-03-14",
          "vehicle": {
            "name": "blue hatchback", "complaint": "shakes at 110 km/h",
            "complaintDetail": {"kind": "shake", "speed": "band", "felt": "steering-wheel", "when": "always", "follows": "road-speed", "neutral": "stays", "pull": "none", "noise": "none", "after": "new-tyres", "warm": "same", "at": "110 km/h"},
            "makerRotation": null, "drive": "front", "odometer": "48200 km", "topSpeed": "190 km/h", "class": "car",
            "axles": [
              {"steered": true, "driven": true, "dual": false,
               "placard": {"size": "195/65 R15 91H", "cold": "230 kPa", "laden": "2,5 bar"},
               "fixings": {"count": 5, "kind": "bolt", "thread": "M14x1.5", "propertyClass": "10.9", "torque": "120 N·m", "seat": "ball", "condition": "dry", "order": [1, 3, 5, 2, 4], "leftHand": false},
               "hub": {"bore": "57.1 mm", "boltCircle": "5 x 112 mm"}},
              {"steered": false, "driven": false, "dual": false, "placard": {"size": "195/65 R15 91H", "cold": "33 psi"}, "hub": {"bore": 57.1, "boltCircle": "5x112"}}
            ],
            "axleLoads": ["890 kg", "760 kg"],
            "spare": {"placard": {"size": "T125/80 D15 95M", "cold": "420 kPa"}}
          },
          "fitted": [
            {"position": "1L",
             "tyre": {"id": "A1", "marking": "195/65 R15 91H", "tin": "DOT 1AB CDEFHJ 2218", "marks": ["M+S"], "directional": true, "mountedFor": "left", "asymmetric": false, "outerFaceOut": true, "maximumPressure": "300 kPa", "seatingLimit": null, "condemned": false},
             "wheel": {"id": "W1", "rim": "6J x 15", "offset": "43 mm", "material": "steel", "spokes": 5, "maker": "vehicle", "bore": "57.1 mm", "boltCircle": "5 x 112 mm", "seat": "ball", "loadRating": "690 kg", "seatingLimit": "3.3 bar"},
             "tread": {"inner": ["5.1 mm", "6/32 in"], "centre": ["5.6 mm", 5.5], "outer": ["5.3 mm", "5,2 mm"], "angles": ["0", "150°"],
                       "ribs": [{"place": "inner", "innerEdge": "5.0 mm", "outerEdge": "5.4 mm"}], "blocks": [{"place": "outer", "leading": 5.6, "trailing": "5.1 mm"}]},
             "pressure": {"value": "225 kPa", "temperature": "18 °C", "hot": false},
             "damage": [{"kind": "puncture", "place": "tread", "size": "3 mm"}]},
            {"position": "1R", "sensor": "not working", "sensorParts": {"battery": "low", "seal": "worn", "nut": "sound"},
             "valve": {"kind": "rubber-snap-in", "state": "cracked", "renewed": "2019-05-02", "rating": "65 psi", "cap": false},
             "tyre": {"marking": "195/65R15 91T", "tin": "DOT A1 B2 CDEF 238", "repaired": true, "repairs": [{"place": "tread", "size": "4 mm", "method": "stem and patch"}], "repairPolicy": "permitted", "repairPolicyFrom": "maker's leaflet of 2025",
                      "runFlat": true, "selfSealing": false, "ranLow": true, "ranLowDistance": "3 km", "ranLowTime": "12 min"},
             "wheel": {"rim": "6 1/2 J x 15", "multiPiece": false, "damage": [{"kind": "bent-flange", "size": "2 mm"}, {"kind": "corrosion"}]},
             "damage": [{"kind": "puncture", "place": "tread", "size": "4 mm", "lean": "20°", "fromMiddle": "30 mm", "fromRepair": "45 cm", "roundFromRepair": 120},
                        {"kind": "cut", "place": "sidewall", "size": "8 mm", "depth": "2/32 in", "cord": false}, {"kind": "crack", "place": "sidewall", "depth": "1 mm", "joined": true}]},
            {"position": "2L", "tyre": {"marking": "7.00-15", "construction": "diagonal"}},
            {"position": "2R", "tyre": {"marking": "195/65 R15 91H"}},
            {"position": "S", "tyre": {"marking": "T125/80 D15 95M"}}
          ],
          "conditions": {"ambient": "18 °C", "expected": "-10 °C", "altitudeSet": "50 m", "altitudeUsed": "1500 m", "laden": true}
        }
        """;
}
