using System.Globalization;
using System.Text;
using System.Xml;
using ProcScript.Analysis;
using ProcScript.Analysis.Reports;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports;

/// <summary>
/// The report that build servers read of test runs: a suite a file; in it a case a procedure, which is passed when it is proven and
/// else skipped, and a case a finding. A finding that fails the run is a failure, any other a case that passed with something to say.
/// </summary>
internal static class JUnitReport
{
    private static readonly XmlWriterSettings Layout = new() { Indent = true, NewLineChars = "\n", OmitXmlDeclaration = true, CheckCharacters = true };

    /// <summary>The suites.</summary>
    public static string Render(CheckOutcome outcome)
    {
        var suites = Suites(outcome);
        StringBuilder text = new("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        using (var xml = XmlWriter.Create(text, Layout))
        {
            xml.WriteStartElement("testsuites");
            xml.WriteAttributeString("name", "procscript");
            WriteNumbers(xml, [.. suites.SelectMany(suite => suite.Cases)]);
            WriteTime(xml, outcome.Time);
            foreach (var (file, cases) in suites)
            {
                Write(xml, outcome.Paths.Of(file), cases);
            }

            xml.WriteEndElement();
        }

        return text.Append('\n').ToString();
    }

    private static List<(string File, List<JUnitCase> Cases)> Suites(CheckOutcome outcome)
    {
        var cases = outcome.Report.Procedures
            .GroupBy(procedure => procedure.Procedure.Declared)
            .Select(variants => (File: variants.Key.Path, Case: Of(variants.First().Procedure.Name, [.. variants])))
            .Concat(outcome.Listed.Concat(outcome.Report.Silenced).Select(reported => (File: reported.Finding.Primary.Path, Case: Of(reported, outcome))));
        return
        [
            .. cases
                .GroupBy(one => one.File, StringComparer.Ordinal)
                .OrderBy(file => file.Key, StringComparer.Ordinal)
                .Select(file => (file.Key, Distinguish(file.Select(one => one.Case)))),
        ];
    }

    /// <summary>No two cases of a suite share a name, and none has a number in it that changes when lines move.</summary>
    private static List<JUnitCase> Distinguish(IEnumerable<JUnitCase> cases)
    {
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        return
        [
            .. cases.Select(one =>
            {
                var ordinal = seen[one.Name] = seen.GetValueOrDefault(one.Name) + 1;
                return ordinal == 1 ? one : one with { Name = string.Create(CultureInfo.InvariantCulture, $"{one.Name} ({ordinal})") };
            }),
        ];
    }

    private static JUnitCase Of(string procedure, IReadOnlyCollection<ProcedureReport> variants) => new(
        $"{procedure}: strip and refit",
        variants.All(variant => variant.IsProven) ? JUnitVerdict.Passed : JUnitVerdict.Skipped,
        variants.Any(variant => variant.Procedure.HasErrors) ? "not checked: its text or its machine has errors" : "not proven",
        "");

    private static JUnitCase Of(ReportedFinding reported, CheckOutcome outcome)
    {
        var finding = reported.Finding;
        var (start, _) = outcome.Report.LinesOf(finding.Primary);
        var verdict = reported.Silencing is not null ? JUnitVerdict.Skipped : outcome.Fails(reported) ? JUnitVerdict.Failed : JUnitVerdict.Passed;
        var message = reported.Silencing switch
        {
            { Kind: SilencingKind.Comment } silencing => $"allowed: {silencing.Reason}",
            { } => "known in the baseline",
            null => finding.Message,
        };
        return new JUnitCase(
            $"{finding.Rule.Code} {finding.Rule.Name}: {finding.Message}",
            verdict,
            message,
            string.Create(CultureInfo.InvariantCulture, $"{outcome.Paths.Of(finding.Primary.Path)}:{start.Line + 1}:{start.Column + 1}\n{FindingText.Of(finding)}"))
        {
            Type = SeverityWords.Of(reported.Severity),
        };
    }

    private static void Write(XmlWriter xml, string file, List<JUnitCase> cases)
    {
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", Legal(file));
        WriteNumbers(xml, cases);
        xml.WriteAttributeString("skipped", Number(cases.Count(one => one.Verdict == JUnitVerdict.Skipped)));
        xml.WriteAttributeString("file", Legal(file));
        foreach (var one in cases)
        {
            xml.WriteStartElement("testcase");
            xml.WriteAttributeString("name", Legal(one.Name));
            xml.WriteAttributeString("classname", Legal(file));
            WriteVerdict(xml, one);
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void WriteVerdict(XmlWriter xml, JUnitCase one)
    {
        switch (one.Verdict)
        {
            case JUnitVerdict.Failed:
                xml.WriteStartElement("failure");
                xml.WriteAttributeString("message", Legal(one.Message));
                xml.WriteAttributeString("type", one.Type);
                xml.WriteString(Legal(one.Text));
                xml.WriteEndElement();
                break;
            case JUnitVerdict.Skipped:
                xml.WriteStartElement("skipped");
                xml.WriteAttributeString("message", Legal(one.Message));
                xml.WriteEndElement();
                break;
            default:
                if (one.Text.Length > 0)
                {
                    xml.WriteElementString("system-out", Legal(one.Text));
                }

                break;
        }
    }

    private static void WriteNumbers(XmlWriter xml, List<JUnitCase> cases)
    {
        xml.WriteAttributeString("tests", Number(cases.Count));
        xml.WriteAttributeString("failures", Number(cases.Count(one => one.Verdict == JUnitVerdict.Failed)));
        xml.WriteAttributeString("errors", "0");
    }

    private static void WriteTime(XmlWriter xml, CheckTime? time)
    {
        if (time is not null)
        {
            xml.WriteAttributeString("time", time.Elapsed.TotalSeconds.ToString("0.000", CultureInfo.InvariantCulture));
        }
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>XML has no place for most control characters, however they are written, and a terminal would obey the others.</summary>
    private static string Legal(string text)
    {
        var legal = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            legal.Append((Rune.IsControl(rune) && rune.Value is not ('\n' or '\t')) || (rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value)) ? "\uFFFD" : rune.ToString());
        }

        return legal.ToString();
    }
}

/// <summary>A case.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Verdict">What came of it.</param>
/// <param name="Message">Why it failed or was skipped.</param>
/// <param name="Text">What there is to say.</param>
internal sealed record JUnitCase(string Name, JUnitVerdict Verdict, string Message, string Text)
{
    /// <summary>The sort of failure.</summary>
    public string Type { get; init; } = "";
}

/// <summary>What came of a case.</summary>
internal enum JUnitVerdict
{
    /// <summary>All is well.</summary>
    Passed,

    /// <summary>Nobody knows, or it does not count.</summary>
    Skipped,

    /// <summary>It fails the run.</summary>
    Failed,
}
