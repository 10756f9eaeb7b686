using System.Collections.Immutable;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using AngleSharp.Html.Parser;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

public sealed class CoverTests
{
    [Theory]
    [InlineData("refrigerant R-134a", "refrigerant")]
    [InlineData("R1234yf circuit", "refrigerant")]
    [InlineData("driver airbag", "restraint")]
    [InlineData("belt pre-tensioner", "restraint")]
    [InlineData("high-voltage battery", "high voltage")]
    [InlineData("400 V bus", "high voltage")]
    [InlineData("60.5 V pack", "high voltage")]
    [InlineData("60 V pack", "")]
    [InlineData("traction battery", "high voltage")]
    [InlineData("400 V traction battery", "high voltage")]
    [InlineData("48 V traction battery", "")]
    [InlineData("12 V battery", "")]
    [InlineData("12 valve cover", "")]
    public void Licensed_work_is_found_by_its_words(string title, string sort)
    {
        var plan = SamplePlan.Bare with { Energies = [new PlanEnergy("e", title, "Off.", "", "", "", "On.", 1, 2)] };

        Assert.Equal(sort, string.Join(' ', LicensedWork.In(plan)));
    }

    [Fact]
    public void Every_pack_defers_to_the_manufacturer_the_law_and_licensed_people()
    {
        foreach (var text in new[] { WebUtility.HtmlDecode(WorkPack.Html(SamplePlan.Bare, PackTemplates.Standard).Text), WorkPack.Markdown(SamplePlan.Bare, PackTemplates.Standard).Text })
        {
            Assert.Contains("The manufacturer's data for this machine and the law where you work come before this pack.", text, StringComparison.Ordinal);
            Assert.Contains("Refrigerant, restraint systems and dangerous voltage are for licensed people only.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("This job touches", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_the_job_touches_is_said_in_both_documents()
    {
        var cooled = SamplePlan.Evaporator with { Licensed = ["refrigerant"] };
        Assert.Contains("<b>This job touches refrigerant.</b>", WorkPack.Html(cooled, PackTemplates.Standard).Text, StringComparison.Ordinal);
        Assert.Contains("**This job touches refrigerant.**", WorkPack.Markdown(cooled, PackTemplates.Standard).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_security_policy_lets_in_the_packs_own_script_and_style_and_nothing_else()
    {
        var document = new HtmlParser().ParseDocument(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text);

        var policy = document.QuerySelector("meta[http-equiv=Content-Security-Policy]")!.GetAttribute("content")!;
        var script = Hash(document.QuerySelector("script")!.TextContent);
        var style = Hash(document.QuerySelector("style")!.TextContent);
        Assert.Equal($"default-src 'none'; script-src '{script}'; style-src '{style}'; img-src data:; base-uri 'none'; form-action 'none'", policy);
    }

    [Fact]
    public void No_element_is_styled_or_scripted_in_place()
    {
        var document = new HtmlParser().ParseDocument(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text);

        Assert.Empty(document.QuerySelectorAll("[style], [onclick]"));
    }

    [Fact]
    public void Every_field_has_a_name_of_its_own()
    {
        var document = new HtmlParser().ParseDocument(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text);

        var names = document.QuerySelectorAll("[data-field]").Select(field => field.GetAttribute("data-field")!).ToImmutableArray();
        Assert.Equal(names.Length, names.Distinct(StringComparer.Ordinal).Count());
        var ids = document.QuerySelectorAll("[id]").Select(element => element.Id!).ToImmutableArray();
        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(document.QuerySelectorAll("input:not([data-do])").Length, names.Length);
    }

    private static string Hash(string text) => $"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";
}
