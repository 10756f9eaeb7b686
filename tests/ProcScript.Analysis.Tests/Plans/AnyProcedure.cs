using System.Globalization;
using System.Text;
using CsCheck;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>
/// Texts of procedures that hold: a machine of a few parts behind and inside one another, tied by all sorts of joints, and a
/// procedure that strips some of them. A part is only ever behind parts with a lower number, and parts are stripped by rising number,
/// so that no strip takes away what a later one names.
/// </summary>
internal static class AnyProcedure
{
    private const string Catalog = """
        tool socket_13 "13 mm socket"
        supply seal_ring "seal ring" { single use }
        supply grease "grease"
        fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  drive socket_13  torque 22 ± 2 N.m }
        fastener m8x60 "M8 × 60 bolt" { thread M8x1.25  drive socket_13  torque 22 ± 2 N.m  keep in order }
        fastener m6x16 "M6 × 16 bolt" { thread M6x1  drive socket_13  torque 9 N.m  spare 10 %  uses 2 mL of grease }
        fastener stretch "stretch bolt" { thread M8x1.25  drive socket_13  torque 30 N.m  single use }
        clip pin "push-in clip" { spare 15 % }
        clip hook "moulded hook" { captive }
        clip cap "bolt cap"
        clip split_pin "split pin"
        connector two_way "2-way connector"
        line union "union" { seals 2 seal_ring }
        bond tape "taped wrap" { uses 1 of grease }
        bond tie "cable tie"
        """;

    private static readonly string[] Joints =
        ["held by {0} m8x25", "held by {0} m8x60", "held by {0} m6x16", "held by {0} stretch", "held by {0} pin", "held by {0} hook",
         "held by {0} tape", "held by {0} tie", "wired by {0} two_way", "piped by {0} union"];

    private static Gen<Row> AnyPart { get; } =
        from parent in CsCheck.Gen.Int[-6, 6]
        from behind in CsCheck.Gen.Int[0, 6].Array[0, 2]
        from joints in CsCheck.Gen.Select(CsCheck.Gen.Int[0, Joints.Length - 1], CsCheck.Gen.Int[1, 6], CsCheck.Gen.Bool).Array[0, 3]
        from mass in CsCheck.Gen.Int[0, 40]
        select new Row(parent, behind, joints, mass);

    /// <summary>The text of a library with one procedure.</summary>
    public static Gen<string> Gen { get; } =
        from parts in AnyPart.Array[1, 7]
        from stripped in CsCheck.Gen.Int[0, parts.Length - 1].HashSet[1, Math.Min(3, parts.Length)]
        from background in CsCheck.Gen.Bool
        from replace in CsCheck.Gen.Bool
        select Write(parts, [.. stripped.Order()], background, replace);

    private static string Write(Row[] rows, int[] stripped, bool background, bool replace)
    {
        var text = new StringBuilder(Catalog);
        var parents = rows.Select((row, i) => row.Parent >= 0 && row.Parent < i ? row.Parent : -1).ToArray();
        text.Append("\n\nmachine rig \"Rig\" {\n  energy battery \"battery\" { isolate \"Off.\"  restore \"On.\"  wait 30 s }\n");
        text.Append("  fluid oil \"oil\" { empty \"Drain.\"  fill \"Fill.\"  charge 2 L  takes 10 min  attended 1 min }\n");
        foreach (var root in Enumerable.Range(0, rows.Length).Where(i => parents[i] < 0))
        {
            WritePart(root);
        }

        text.Append("}\n\nprocedure job \"Job\" on rig {\n");
        if (background)
        {
            text.Append("  stage \"Make safe\" { empty oil in background  isolate battery }\n");
        }

        foreach (var part in stripped)
        {
            text.Append(CultureInfo.InvariantCulture, $"  stage \"Stage {part}\" {{ strip p{part} {{ people {1 + (part % 2)} }} }}\n");
        }

        var last = stripped[^1];
        text.Append(CultureInfo.InvariantCulture, $"  work {{ clean p{last} in background {{ time 5 min }}  ");
        text.Append(replace ? $"replace p{last}" : "task \"Look at it.\"").Append(" }\n}\n");
        return text.ToString();

        void WritePart(int i)
        {
            text.Append(CultureInfo.InvariantCulture, $"  part p{i} \"part {i}\" {{\n");
            if (rows[i].Mass > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"    mass {rows[i].Mass} kg\n");
            }

            text.Append(i % 2 == 0 ? $"    mark \"Dot {i}.\"\n" : "").Append(i % 3 == 0 ? "    keep in order\n" : i % 3 == 1 ? "    measured \"thickness\"\n" : "");
            foreach (var front in rows[i].Behind.Where(front => front < i && !IsInside(i, front)).Distinct())
            {
                text.Append(CultureInfo.InvariantCulture, $"    behind p{front}\n");
            }

            foreach (var (place, (kind, count, covered)) in rows[i].Joints.Index())
            {
                var name = $"j{i}_{place}";
                text.Append("    ").AppendFormat(CultureInfo.InvariantCulture, Joints[kind], count);
                text.Append(CultureInfo.InvariantCulture, $" as {name}");
                text.Append(Joints[kind].StartsWith("wired") ? " on battery" : Joints[kind].StartsWith("piped") ? " carries oil" : "");
                var over = place % 2 == 0 ? "covered by {0} cap" : "locked by {0} split_pin";
                text.Append(covered ? $" {string.Format(CultureInfo.InvariantCulture, over, count)} as {name}_cap\n" : "\n");
            }

            foreach (var child in Enumerable.Range(0, rows.Length).Where(child => parents[child] == i))
            {
                WritePart(child);
            }

            text.Append("  }\n");
        }

        bool IsInside(int part, int other)
        {
            for (; part >= 0; part = parents[part])
            {
                if (part == other)
                {
                    return true;
                }
            }

            return false;
        }
    }

    private sealed record Row(int Parent, int[] Behind, (int Kind, int Count, bool Covered)[] Joints, int Mass);
}
