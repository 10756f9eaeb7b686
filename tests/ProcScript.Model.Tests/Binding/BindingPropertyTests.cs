using System.Globalization;
using System.Text;
using CsCheck;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Tests.Binding;

/// <summary>What holds of binding whatever the text.</summary>
public sealed class BindingPropertyTests
{
    private static readonly string[] Fragments =
    [
        "{", "}", "[", "]", "(", ")", ",", "\"", "//", "\n", "\0", "\ud800", "±", "..", "N.m", "22", "-1", "0", "999999999999999999999",
        "machine", "part", "procedure", "option ", "held by 2 ", " as ", "covered by 1 snap_cap as c", "needs ", "behind ", "torque ",
        "each v in a, b {", "each r in 1..100000 {", "when not air_seat {", "when side is left {", "refit {", "stage \"x\" {",
        "do ", "use \"", "to ", "undo ", "remove ", "danger \"x\"", "{side}", "{{", "seat", "seat_bolts", "pillar_trim[",
    ];

    /// <summary>Cut, doubled, swapped and spliced texts: none throws, none loses a file, and every place lies in its file.</summary>
    [Fact]
    public void Any_mutilated_text_binds()
    {
        string[] texts = [WorkedExample.Catalog, WorkedExample.Cab, WorkedExample.Procedures];
        var fragment = Gen.Int[0, Fragments.Length - 1].Select(index => Fragments[index]);
        var edit = Gen.Select(Gen.Int[0, 2], Gen.Double[0, 1], Gen.Int[0, 60], fragment);
        edit.Array[1, 6].Sample(edits =>
        {
            string[] mutilated = [.. texts];
            foreach (var (file, at, cut, inserted) in edits)
            {
                var start = (int)(at * mutilated[file].Length);
                var end = Math.Min(mutilated[file].Length, start + cut);
                mutilated[file] = mutilated[file][..start] + inserted + mutilated[file][end..];
            }

            var library = Bind(mutilated);
            Assert.Equal(3, library.Trees.Count);
            foreach (var place in library.Findings.SelectMany(Places))
            {
                Assert.InRange(place.Span.End, place.Span.Start, library.Trees[place.Path].Text.Content.Length);
            }

            Assert.Equal(library.Findings.Length, library.Findings.DistinctBy(finding => (finding.Rule.Code, finding.Primary)).Count());
        }, iter: 400);
    }

    [Fact]
    public void The_same_files_give_the_same_library()
    {
        var text = WorkedExample.Procedures.Replace("_c", "c", StringComparison.Ordinal).Replace("adl", "adll", StringComparison.Ordinal);
        var first = Bind([WorkedExample.Catalog, WorkedExample.Cab, text]);
        for (var round = 0; round < 5; round++)
        {
            var again = Bind([WorkedExample.Catalog, WorkedExample.Cab, text]);
            Assert.Equal(first.Findings.Select(PrintedFinding), again.Findings.Select(PrintedFinding));
            Assert.Equal(first.Procedures.Select(one => Printed(one)), again.Procedures.Select(one => Printed(one)));
        }

        static string PrintedFinding(Finding finding) => $"{finding.Rule.Code} {finding.Message} {finding.Primary} {finding.Help}";
    }

    /// <summary>Declarations at the top of a file, and parts in a machine, may stand in any order.</summary>
    [Fact]
    public void The_order_of_independent_declarations_changes_nothing_but_order()
    {
        string[] top =
        [
            "tool lever \"lever\"",
            "clip pin \"pin\" { tool lever }",
            "supply grease \"grease\"",
            "bond tape \"tape\" { uses 2 g of grease }",
            "procedure lamp_out \"Lamp\" on cab { stage \"s\" { release lamp_pin  remove lamp } }",
            "procedure all_out \"All\" on cab { do lamp_out  stage \"t\" { release trim_pins  cut trim_tape  remove trim } }",
        ];
        string[] parts =
        [
            "part lamp \"lamp\" { behind trim  held by 1 pin as lamp_pin }",
            "part trim \"trim\" { held by 2 pin as trim_pins  held by 1 tape as trim_tape to shelf }",
            "part shelf \"shelf\" { held by 4 pin as shelf_pins  aside \"Tilt.\" needs shelf_pins }",
            "energy battery \"battery\" { isolate \"i\"  restore \"r\" }",
        ];
        var expected = Shape(Samples.Bind(Text(top, parts)));
        Gen.Select(Gen.Shuffle(top), Gen.Shuffle(parts))
            .Sample((tops, members) => Shape(Samples.Bind(Text(tops, members))) == expected, iter: 60);

        static string Text(IEnumerable<string> top, IEnumerable<string> parts) =>
            string.Join('\n', top.Append("machine cab \"cab\" {\n" + string.Join('\n', parts) + "\n}"));
    }

    [Fact]
    public void Unrolling_equals_what_one_would_write_by_hand() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[1, 4]).Sample((rows, pins) =>
        {
            var range = string.Create(CultureInfo.InvariantCulture, $"1..{rows}");
            var unrolled = Samples.Bind($$"""
                clip pin "pin"
                machine cab "cab" { each row in {{range}} {
                  part p[row] "pad {row}" { held by {{pins}} pin as j[row]  when row is not 1 { needs p[1] out } }
                } }
                procedure out "out" on cab { each row in {{range}} {
                  stage "Row {row}" { release j[row]  when row is 1 { caution "First." }  remove p[row] }
                } }
                """);
            var byHand = new StringBuilder("clip pin \"pin\"\nmachine cab \"cab\" {\n");
            var stages = new StringBuilder("procedure out \"out\" on cab {\n");
            for (var row = 1; row <= rows; row++)
            {
                var (needs, caution) = row > 1 ? ("needs p[1] out", "") : ("", "caution \"First.\"");
                byHand.Append(CultureInfo.InvariantCulture, $"part p[{row}] \"pad {row}\" {{ held by {pins} pin as j[{row}] {needs} }}\n");
                stages.Append(CultureInfo.InvariantCulture, $"stage \"Row {row}\" {{ release j[{row}] {caution} remove p[{row}] }}\n");
            }

            var written = Samples.Bind(byHand.Append("}\n").Append(stages).Append('}').ToString());
            Assert.Empty(unrolled.Words());
            return Shape(unrolled) == Shape(written);
        }, iter: 40);

    private static IEnumerable<SourceSpan> Places(Finding finding) => finding.Related
        .Select(one => one.Place)
        .Append(finding.Primary)
        .Concat(finding.Fixes.SelectMany(fix => fix.Edits.Select(one => one.Place)));

    private static Library Bind(string[] texts) => Samples.Bind(
        ("catalog/metric.proc", texts[0]),
        ("ketterby-t40/cab.proc", texts[1]),
        ("ketterby-t40/evaporator.proc", texts[2]));

    /// <summary>A library without its places and without the order of declarations.</summary>
    private static string Shape(Library library) => string.Join(
        '\n',
        library.Findings.Select(finding => finding.Message)
            .Concat(library.Machines.SelectMany(machine => machine.Items.Values.Select(one => Printed(one))))
            .Concat(library.Procedures.Select(one => Printed(one)))
            .Order(StringComparer.Ordinal));

    private static string Printed(MachineItem item)
    {
        var conditions = string.Join(' ', item.Conditions.Select(one => $"{one.Item.Name}:{one.State}:{one.Phase}"));
        return item switch
        {
            Joint joint => $"{item.Name} '{item.Title}' {joint.Count} {joint.Kind.Name} {joint.Owner.Name} {joint.Other?.Name} {conditions}",
            Part part => $"{item.Name} '{item.Title}' in {part.Parent?.Name} {conditions} {string.Join(',', Freeing(part))}",
            _ => $"{item.Name} '{item.Title}' {conditions}",
        };
    }

    private static IEnumerable<string> Freeing(Part part) => part.Aside?.Joints.Select(joint => joint.Name) ?? [];

    private static string Printed(Procedure procedure) =>
        $"{procedure.Name} {procedure.HasErrors} {string.Join(" | ", procedure.Stages.Select(one => Printed(one)))}";

    private static string Printed(Stage stage) => $"{stage.Title}: {string.Join(", ", stage.Steps.Select(one => Printed(one)))}";

    private static string Printed(Step step) => $"{step.Verb} {step.Target?.Name} {step.Alerts.Length} {step.Calls.Length}";
}
