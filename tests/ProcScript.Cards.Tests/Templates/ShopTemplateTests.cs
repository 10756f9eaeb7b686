using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests.Templates;

/// <summary>A shop replaces templates file by file, and is told what is wrong with them.</summary>
public sealed class ShopTemplateTests
{
    [Fact]
    public void A_replaced_file_shows_and_the_others_stay()
    {
        var html = Html("cover.html", "<section id=\"cover\"><h1>Shop of {{ plan.machineTitle }}</h1></section>\n");

        Assert.Empty(html.Faults);
        Assert.Contains("<h1>Shop of Ketterby T40 tractor, cab</h1>", html.Text, StringComparison.Ordinal);
        Assert.Contains("<h2 id=\"close-out-title\">", html.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_shops_template_writes_is_escaped_too()
    {
        var plan = SamplePlan.Evaporator with { Title = "<b>\"x\"</b>" };

        var html = WorkPack.Html(plan, With("cover.html", "<p title=\"{{ plan.title }}\">{{ plan.title }}</p>"));

        Assert.Contains("<p title=\"&lt;b&gt;&quot;x&quot;&lt;/b&gt;\">&lt;b&gt;&quot;x&quot;&lt;/b&gt;</p>", html.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_line_ends_change_nothing()
    {
        const string Text = "<p>\n{{ plan.job }}\n</p>\n";

        Assert.Equal(Html("cover.html", Text).Text, Html("cover.html", Text.ReplaceLineEndings("\r\n")).Text);
    }

    [Theory]
    [InlineData("{{ if plan.title }}\nno end", 1, "end")]
    [InlineData("one\n{{ plan.titel }}", 2, "titel")]
    [InlineData("{{ plan.title | uppercase }}", 1, "uppercase")]
    [InlineData("{{ include 'no-such.html' }}", 1, "no-such.html")]
    [InlineData("{{ plan.title = 'x' }}", 1, "readonly")]
    [InlineData("{{ for step in plan.work.steps }}\n{{ step.nope }}{{ end }}", 2, "nope")]
    [InlineData("{{ date.now }}", 1, "date")]
    [InlineData("{{ math.random 1 6 }}", 1, "random")]
    [InlineData("{{ while true }}{{ end }}", 1, "limit")]
    [InlineData("{{ 'a' * 2000000000 }}", 1, "limit")]
    [InlineData("{{ 'a' | string.pad_left 2000000000 }}", 1, "limit")]
    [InlineData("{{ (1..2000000000) | array.join ',' }}", 1, "limit")]
    [InlineData("{{ 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa!' | regex.match '(a+)+$' }}", 1, "time")]
    [InlineData("{{ include 'cover.html' }}", 1, "limit")]
    [InlineData("{{ prose 1 2 3 }}", 1, "argument")]
    [InlineData("{{ numbers 5 }}", 1, "convert")]
    public void A_mistake_is_told_with_its_place_and_no_pack_is_made(string text, int line, string said)
    {
        var html = Html("cover.html", text);

        var fault = Assert.Single(html.Faults);
        Assert.Equal(("cover.html", line), (fault.File, fault.Line));
        Assert.True(fault.Column > 0);
        Assert.Contains(said, fault.Message, StringComparison.OrdinalIgnoreCase);
        Assert.NotEmpty(fault.Help);
        Assert.Equal("", html.Text);
        Assert.False(html.Succeeded);
    }

    [Fact]
    public void Brackets_nested_beyond_sense_are_told_as_a_mistake()
    {
        var html = Html("cover.html", "{{ " + new string('(', 200_000) + "1" + new string(')', 200_000) + " }}");

        Assert.All(html.Faults, fault => Assert.Equal("cover.html", fault.File));
        Assert.NotEmpty(html.Faults);
    }

    [Fact]
    public void A_mistake_in_a_template_of_one_document_is_told_for_the_other_too()
    {
        var markdown = WorkPack.Markdown(SamplePlan.Evaporator, With("cover.html", "{{ if"));

        Assert.Equal("cover.html", Assert.Single(markdown.Faults.Select(fault => fault.File).Distinct()));
    }

    [Fact]
    public void A_file_that_no_pack_uses_is_named_with_those_that_exist()
    {
        var html = Html("covr.html", "<p>");

        var fault = Assert.Single(html.Faults);
        Assert.Equal("covr.html", fault.File);
        Assert.Contains("covr.html", fault.Message, StringComparison.Ordinal);
        Assert.Contains("cover.html", fault.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pack.js", "const end = '</SCRIPT>';", "</script")]
    [InlineData("pack.js", "const open = '<!--';", "<!--")]
    [InlineData("pack.css", "p::before { content: '</style>'; }", "</style")]
    public void A_script_or_style_that_would_end_its_element_is_refused(string file, string text, string tag)
    {
        var fault = Assert.Single(Html(file, text).Faults);

        Assert.Equal(file, fault.File);
        Assert.Contains(tag, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Templates_that_were_replaced_do_not_touch_the_standard_ones()
    {
        var before = WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text;
        _ = With("cover.html", "changed");

        Assert.Equal(before, WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text);
    }

    private static PackTemplates With(string file, string text) => PackTemplates.Standard.With(new Dictionary<string, string>(StringComparer.Ordinal) { [file] = text });

    private static PackText Html(string file, string text) => WorkPack.Html(SamplePlan.Evaporator, With(file, text));
}
