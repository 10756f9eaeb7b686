using ProcScript.Syntax.Nodes;

namespace ProcScript.Syntax.Tests;

/// <summary>One slip in a good file gives one finding, and what stands behind it is in the tree all the same.</summary>
public sealed class SlipTests
{
    private static readonly string Good = Sample.Read("slips.proc");

    /// <summary>What is written, what the slip makes of it, and what is said of it.</summary>
    public static TheoryData<string, string, string> Slips => new()
    {
        // A word is missing.
        { "use \"", "\"", "`\"metric.proc\"` does not belong here" },
        { "use \"metric.proc\"", "use", "a quoted text is missing behind `use`" },
        { "fastener m8x25", "m8x25", "a catalog entry (such as `tool`) or `machine` is missing before `m8x25`" },
        { "fastener m8x25", "fastener", "a name is missing before `\"M8 × 25 flange bolt\"`" },
        { "thread M8x1.25", "thread", "a name or a quoted text is missing before `length`" },
        { "length 25", "length", "a number is missing before `mm`" },
        { "length 25", "25", "a word such as `length` is missing before `25`" },
        { "22 ± 2", "22 2", "`N` cannot stand here" },
        { "machine press", "press", "`machine` is missing before `press`" },
        { "machine press", "machine", "a name is missing before `\"Hand press\"`" },
        { "energy mains", "mains", "`energy`, `fluid`, `control` or `part` is missing before `mains`" },
        { "wait 60 s", "wait s", "a number is missing before `s`" },
        { "expect <=", "<=", "`expect` is missing before `<=`" },
        { "up, down", "up down", "`down` does not belong here" },
        { "part guard", "guard", "`part` is missing before `guard`" },
        { "part guard", "part", "a name is missing before `\"guard\"`" },
        { "mass 3", "3", "a word such as `length` is missing before `3`" },
        { "held by", "by", "`held`, `wired` or `piped` is missing before `by`" },
        { "held by 4", "held 4", "`by` is missing before `4`" },
        { "by 4 m8x25", "by m8x25", "a whole number is missing before `m8x25`" },
        { "m8x25 as guard", "m8x25 guard", "`as` is missing before `guard_bolts`" },
        { "4 m8x25 as", "4 as", "a name is missing before `as`" },
        { "as guard_bolts", "as", "a name is missing before `at`" },
        { "at \"corners\"", "at", "a quoted text is missing behind `at`" },
        { "on mains  behind", "on behind", "a name is missing before `behind`" },
        { "behind guard }", "behind }", "a name is missing before `}`" },
        { "aside \"Hang", "\"Hang", "a word such as `aside` is missing before `\"Hang it up.\"`" },
        { "each side", "side", "`each` is missing before `side`" },
        { "each side in", "each side", "`in` is missing before `left`" },
        { "side in left, right {", "side in {", "a name or a whole number is missing before `{`" },
        { "foot[side] \"", "foot[side \"", "`]` is missing before `\"{side} foot\"`" },
        { "foot[side] \"", "foot[] \"", "a name or a whole number is missing before `]`" },
        { "when kit", "kit", "`part` or `when` is missing before `kit`" },
        { "when kit", "when", "a name is missing before `{`" },
        { "procedure guard_off", "guard_off", "`procedure` is missing before `guard_off`" },
        { "(side in", " side in", "`(` is missing before `side`" },
        { "guard_off(side in", "guard_off side of", "`side` cannot stand here" },
        { "right) ", "right ", "`)` is missing before `\"Take the guard off\"`" },
        { " on press", " press", "`on` is missing before `press`" },
        { "on press {", "on {", "a name is missing before `{`" },
        { "goal replace", "replace", "`goal` is missing before `replace`" },
        { "goal replace", "goal", "a verb (such as `undo`) is missing before `guard`" },
        { "stage \"Guard\"", "\"Guard\"", "`stage` is missing before `\"Guard\"`" },
        { "stage \"Guard\"", "stage Guard", "`Guard` cannot stand here" },
        { "stage \"Guard\"", "stage the guard at the front", "`the guard at the front` cannot stand here" },
        { "each side in", "each side of", "`of` cannot stand here" },
        { "on press {", "{", "`on` and a name are missing before this block" },
        { "stage \"Guard\"", "stage", "a quoted text is missing before `{`" },
        { "warning \"Sharp", "\"Sharp", "a word such as `measure` is missing before `\"Sharp edges.\"`" },
        { "undo 2 of guard", "2 of guard", "a verb (such as `undo`) is missing before `2`" },
        { "2 of guard", "2 guard", "`of` is missing before `guard_bolts`" },
        { "of guard_bolts", "of", "a name is missing before `{`" },
        { "set lever to", "set lever", "`to` is missing before `down`" },
        { "to down", "to", "a name or a whole number is missing behind `to`" },
        { "in background", "in", "`background` is missing behind `in`" },
        { "remove guard", "remove", "a name is missing behind `remove`" },
        { "remove guard", "guard", "a verb (such as `undo`) or `do` is missing before `guard`" },
        { "lid because", "lid", "`because` is missing before `\"it breaks\"`" },
        { "do other", "other", "`do` is missing before `other`" },
        { "do other(", "do (", "a name is missing before `(`" },
        { "other(left)", "other(left", "`)` is missing behind `left`" },
        { "work {", "{", "`work` is missing before `{`" },
        { "measure \"gap\"", "measure", "a quoted text is missing before `expect`" },
        { "0.5 .. 2.0", "0.5 2.0", "`±` or `..` is missing before `2.0`" },
        { "refit {", "{", "`refit` is missing before `{`" },
        { "after fit frame", "fit frame", "`before` or `after` is missing before `fit`" },
        { "after fit frame", "after frame", "a verb (such as `undo`) is missing before `frame`" },
        { "after fit frame", "", "`check` cannot stand here" },

        // The sentences of power, tests and proof.
        { "voltage 400", "voltage", "a number is missing before `V`" },
        { "400 V ac", "400 V oc", "`oc` is not a word of the language" },
        { "verify \"Measure.\"", "verify", "a quoted text is missing before `at`" },
        { "at frame expect", "frame expect", "`at` or `with` is missing before `frame`" },
        { "<= 5 V { behind", "<= 5 V behind", "this `}` closes no block" },
        { "verify drive", "verify", "a name is missing behind `verify`" },
        { "verify drive", "verfiy drive", "`verfiy` is not a word of the language" },
        { "test \"Runs.\"", "\"Runs.\"", "`test` is missing before `\"Runs.\"`" },
        { "test \"Runs.\"", "test", "a quoted text is missing before `before`" },
        { "test \"Runs.\"", "tset \"Runs.\"", "`tset` is not a word of the language" },
        { "before fit guard {", "before guard {", "a verb (such as `undo`) is missing before `guard`" },
        { "before fit guard {", "before fit guard", "`test \"Runs.\" before fit guard` lacks the `{` of its block" },
        { "\"Let it run.\"\n    }", "\"Let it run.\"\n", "the block of `test \"Runs.\" before fit guard` is never closed" },
        { "power drive", "drive", "`power` is missing before `drive`" },
        { "power drive", "powr drive", "`powr` is not a word of the language" },
        { "drive, mains", "drive mains", "`,` is missing before `mains`" },
        { "measure \"Current\"", "undo lid", "`undo` cannot stand here" },
        { "while guard", "guard", "`while` is missing before `guard`" },
        { "while guard", "whlie guard", "`whlie` is not a word of the language" },
        { "lid open because", "lid because", "`open` is missing before `because`" },
        { "open because \"It is", "open \"It is", "`because` is missing before `\"It is watched.\"`" },
        { "open because \"It is watched.\"", "open because", "a quoted text is missing behind `because`" },
        { "open because \"It is watched.\"", "open", "`task` cannot stand here" },
        { "while tray", "tray", "`while` is missing before `tray`" },
        { "while tray", "whiel tray", "`whiel` is not a word of the language" },
        { "because \"It slides.\"", "\"It slides.\"", "`because` is missing before `\"It slides.\"`" },
        { "because \"It slides.\"", "", "`check` cannot stand here" },

        // Both an action and an alert that stands one way only begin with `strip`.
        { "discard lid because \"it breaks\"", "strip", "a name is missing behind `strip`" },
        { "warning \"Sharp", "strip \"Sharp", "an alert (such as `warning`) is missing before `\"Sharp edges.\"`" },
        { "warning \"Sharp", "refit \"Sharp", "an alert (such as `warning`) is missing before `\"Sharp edges.\"`" },
        { "warning \"Sharp", "refit warnng \"Sharp", "`warnng` is not a word of the language" },
        { "warning \"Sharp edges.\"", "strip warning", "a quoted text is missing behind `warning`" },
        { "warning \"Sharp edges.\"", "refit", "`undo` cannot stand here" },
        { "mass 3 kg", "strip \"Sharp.\"", "an alert (such as `warning`) or `figure` is missing before `\"Sharp.\"`" },
        { "mass 3 kg", "refit caution", "a quoted text is missing behind `caution`" },

        // A brace or a quote is missing.
        { "\"M8 × 25 flange bolt\" {", "\"M8 × 25 flange bolt\"", "`fastener m8x25 \"M8 × 25 flange bolt\"` lacks the `{` of its block" },
        { "N.m\n}", "N.m\n", "the block of `fastener m8x25 \"M8 × 25 flange bolt\"` is never closed" },
        { "\"Hand press\" {", "\"Hand press\"", "`machine press \"Hand press\"` lacks the `{` of its block" },
        { "\"guard\" {", "\"guard\"", "`part guard \"guard\"` lacks the `{` of its block" },
        { "needs guard_bolts\n  }", "needs guard_bolts\n", "the block of `part guard \"guard\"` is never closed" },
        { "behind guard }", "behind guard", "the block of `wired by 1 two_way as lamp_plug` is never closed" },
        { "\"tray\"\n  }\n}", "\"tray\"\n  }\n", "the block of `machine press \"Hand press\"` is never closed" },
        { "\"Guard\" {", "\"Guard\"", "`stage \"Guard\"` lacks the `{` of its block" },
        { "\"it breaks\"\n  }", "\"it breaks\"\n", "the block of `stage \"Guard\"` is never closed" },
        { "{ up, down }", "up, down }", "this `}` closes no block" },
        { "\"frame\"", "\"frame", "this text has no closing quote" },
        { "\"frame\"", "frame\"", "the text that ends here has no opening quote" },
        { "\"guard\" {", "\"guard {", "this text has no closing quote" },
        { "\"guard\" {", "guard\" {", "the text that ends here has no opening quote" },
        { "\"Pull the plug.\"", "\"Pull the plug.", "this text has no closing quote" },

        // A word is misspelt, twice there, or another.
        { "undo 2", "undoo 2", "`undoo` is not a word of the language" },
        { "remove guard", "rmeove guard", "`rmeove` is not a word of the language" },
        { "machine press", "Machine press", "`Machine` is not a word of the language" },
        { "stage \"", "stgae \"", "`stgae` is not a word of the language" },
        { "held by", "hold by", "`hold` is not a word of the language" },
        { "goal replace", "goal replaec", "`replaec` is not a word of the language" },
        { "in background", "in backgruond", "`backgruond` is not a word of the language" },
        { "part frame", "part part frame", "`part` does not belong here" },
        { "undo 2", "undo undo 2", "`undo` does not belong here" },
        { "set lever", "set the lever", "`lever` does not belong here" },
        { "part guard \"", "part work \"", "`work` is a word of the language and cannot be a name" },
        { "remove guard", "remove check", "`check` is a word of the language and cannot be a name" },
        { "mass 3 kg", "mass \"3 kg\"", "`\"3 kg\"` cannot stand here" },
        { "mass 3 kg", "mass 3,5 kg", "`3,5` is written with a comma: a decimal number has a point, and thousands have no sign" },
        { "mass 3 kg", "mass 1 500 kg", "`kg` cannot stand here" },
        { "mass 3 kg", "mass 3 kg at \"rim\"", "`at` cannot stand here" },
        { "mass 3 kg", "mass = 3 kg", "`=` is not part of the language" },
        { "mass 3 kg", "mass: 3 kg", "`:` is not part of the language" },
        { "remove guard", "remove guard;", "`;` is not part of the language" },
        { "remove guard", "remove guard }", "this `}` closes no block" },
        { "\"frame\"", "“frame”", "a text stands between plain quotes, not typographic ones" },
        { "\"frame\"", "'frame'", "`'` is not part of the language" },
        { "part frame", "# part frame", "a comment starts with `//`, not with `#`" },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_gives_one_finding(string written, string slip, string message)
    {
        var tree = Sample.Parse(Mutated(written, slip));

        Assert.Equal([message], tree.Findings.Select(finding => finding.Message));
    }

    [Theory]
    [MemberData(nameof(Slips))]
    public void What_stands_behind_a_slip_is_in_the_tree(string written, string slip, string message)
    {
        Assert.NotEmpty(message);
        var behind = Good.IndexOf('\n', Good.IndexOf(written, StringComparison.Ordinal) + written.Length);
        var expected = Named(Good).Where(named => named.Start > behind).Select(named => named.Name);
        var found = Named(Mutated(written, slip)).Select(named => named.Name).ToHashSet();

        Assert.DoesNotContain(expected, name => !found.Contains(name));
    }

    [Theory]
    [InlineData("use metric.proc\"", "metric.proc")]
    [InlineData("use “metric.proc”", "metric.proc")]
    [InlineData("use \"metric.proc", "metric.proc")]
    public void A_text_that_lacks_a_quote_says_what_it_would_with_it(string written, string meant) =>
        Assert.Equal(meant, Assert.Single(Sample.Parse(written + "\n").Root.Uses).Path.Value);

    private static string Mutated(string written, string slip)
    {
        var start = Good.IndexOf(written, StringComparison.Ordinal);
        Assert.True(start >= 0, written);
        return Good.Remove(start, written.Length).Insert(start, slip);
    }

    private static IEnumerable<(string Name, int Start)> Named(string content) =>
        from node in Sample.Parse(content).Root.DescendantsAndSelf()
        let name = node switch
        {
            DeclarationSyntax declaration => declaration.Name.Text,
            PartSyntax part => part.Name.Name.Text,
            JointSyntax joint => joint.Name.Name.Text,
            EachSyntax each => each.Variable.Text,
            StageSyntax stage => stage.Title.Value,
            ActionSyntax action => action.Verb.Text + action.Target.Name.Text,
            TextActionSyntax action => action.Text.Value,
            DiscardSyntax discard => discard.Target.Name.Text,
            DoSyntax call => call.Procedure.Text,
            OrderRuleSyntax rule => rule.Verb.Text + rule.Target.Name.Text,
            CheckRuleSyntax check => check.Text.Value,
            TestRuleSyntax test => test.Text.Value,
            OpenRuleSyntax rule => rule.Verb.Text + rule.While.Open[0].Name.Text,
            _ => null,
        }
        where name is not null
        select (name, node.Span.Start);
}
