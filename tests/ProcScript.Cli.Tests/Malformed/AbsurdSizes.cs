namespace ProcScript.Cli.Tests.Malformed;

/// <summary>Texts with too much of something.</summary>
internal static class AbsurdSizes
{
    private const int Many = 100_000;
    private const int Thousands = 20_000;

    public static IEnumerable<MalformedInput> All =>
    [
        MalformedInput.Wrong("a line of twenty million characters", "// " + new string('x', 20_000_000)),
        MalformedInput.Fine("a line of fifteen million characters", Sample.Text + "// " + new string('x', 15_000_000)),
        MalformedInput.Wrong("a name of a million letters", Sample.Steps("remove " + new string('x', 1_000_000))),
        MalformedInput.Fine("a title of a million letters", $"tool t \"{new string('x', 1_000_000)}\"\n"),
        MalformedInput.Wrong("a count of four hundred digits", Sample.Steps($"undo {new string('9', 400)} of cover_bolts")),
        MalformedInput.Wrong("a count just above thirty-one bits", Sample.MachineWith("part x \"X\" { held by 2147483648 m8 as x_bolts }")),
        MalformedInput.Wrong("a count of two thousand million", Sample.MachineWith("part x \"X\" { held by 2147483647 m8 as x_bolts }")),
        MalformedInput.Wrong("a count of zero", Sample.MachineWith("part x \"X\" { held by 0 m8 as x_bolts }")),
        MalformedInput.Wrong("a count below zero", Sample.MachineWith("part x \"X\" { held by -4 m8 as x_bolts }")),
        MalformedInput.Wrong("a number of five thousand digits", Sample.MachineWith($"part x \"X\" {{ mass {new string('1', 5000)}.{new string('1', 5000)} kg }}")),
        MalformedInput.Wrong("a fraction over zero", Sample.MachineWith("part x \"X\" { mass 1/0 kg }")),
        MalformedInput.Wrong("a mass below zero", Sample.MachineWith("part x \"X\" { mass -1 kg }")),
        MalformedInput.Wrong("a hundred thousand unknown signs", Lines(Many, i => "? ")),
        MalformedInput.Wrong("a hundred thousand unknown signs on one line", string.Concat(Enumerable.Repeat("? ; ", Many / 2))),
        MalformedInput.Wrong("twenty thousand unknown names", Sample.Steps(Lines(Thousands, i => $"remove cuver{i}"))),
        MalformedInput.Wrong("a hundred thousand times the same name", Lines(Many, i => "tool t \"T\"")),
        MalformedInput.Wrong("twenty thousand times the same action", Sample.Steps("isolate battery\n" + Lines(Thousands, i => "undo cover_bolts"))),
        MalformedInput.Wrong("twenty thousand errors of grammar", Lines(Thousands, i => "tool tool tool")),
        MalformedInput.Wrong("thirty options", Sample.MachineWith(string.Join('\n', Enumerable.Range(0, 30).Select(i => $"option o{i} \"O\"\nwhen o{i} {{ part q{i} \"Q\" }}")))
            + "procedure p \"P\" on m { stage \"S\" { " + string.Concat(Enumerable.Range(0, 30).Select(i => $"when o{i} {{ task \"T\" }} ")) + "} }\n"),
        MalformedInput.Wrong("a loop over a thousand million", Sample.MachineWith("each i in 1 .. 1000000000 { part x[i] \"X\" }")),
        MalformedInput.Wrong("ten loops over ten in each other", Sample.MachineWith(
            string.Concat(Enumerable.Range(0, 10).Select(i => $"each i{i} in 0 .. 9 {{ ")) + "part x[i0, i1, i2, i3, i4, i5, i6, i7, i8, i9] \"X\"" + new string('}', 10))),
        MalformedInput.Wrong("a million choices of arguments", Sample.Machine + "procedure p(a in 1 .. 1000, b in 1 .. 1000) \"P\" on m { stage \"S\" { task \"T\" } }\n"),
        MalformedInput.Wrong("ten thousand findings in one sentence", Sample.MachineWith(
            "part x \"X\" { held by " + string.Join(" held by ", Enumerable.Repeat("1 unknown as y", 10_000)) + " }")),
        MalformedInput.Wrong("a control of one hundred and fifty thousand positions and one of none", Sample.MachineWith(
            $"control c \"C\" {{ {string.Join(", ", Enumerable.Range(0, 150_000).Select(i => $"p{i}"))} }} control d \"D\" {{ }}")),
        MalformedInput.Wrong("eight options, 256 arguments and eighteen thousand steps", Optional(8)
            + "procedure p(x in 1 .. 256) \"P\" on o { stage \"S\" { each i in 1 .. 18000 { task \"T {i} {x}\" } } }\n"),
        MalformedInput.Wrong("six options, sixteen arguments and two thousand steps", Optional(6)
            + "procedure p(x in 1 .. 16) \"P\" on o { stage \"S\" { each i in 1 .. 2000 { task \"T {i} {x}\" } } }\n"),
        MalformedInput.Wrong("procedures that each do the one before twice", Sample.Machine
            + "procedure p0 \"P\" on m { stage \"S\" { task \"T\" } }\n"
            + string.Concat(Enumerable.Range(1, 60).Select(i => $"procedure p{i} \"P\" on m {{ do p{i - 1} do p{i - 1} }}\n"))),
    ];

    private static string Optional(int options) =>
        Sample.Machine + $"machine o \"O\" {{ {string.Concat(Enumerable.Range(0, options).Select(i => $"option o{i} \"O\" when o{i} {{ part q{i} \"Q\" }} "))} }}\n";

    private static string Lines(int count, Func<int, string> line) => string.Join('\n', Enumerable.Range(0, count).Select(line));
}
