using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reports;

/// <summary>Something that a check left out, so that silence about it is no good news.</summary>
/// <param name="What">What was left out.</param>
/// <param name="Why">The reason.</param>
/// <param name="Place">Where it is declared; null where it is about the whole library.</param>
public sealed record NotChecked(string What, string Why, SourceSpan? Place)
{
    /// <summary>What was left out of a check, in the order of files and text.</summary>
    public static ImmutableArray<NotChecked> Of(LibraryReport report)
    {
        var left = ImmutableArray.CreateBuilder<NotChecked>();
        foreach (var variants in report.Procedures.GroupBy(procedure => procedure.Procedure.Declared))
        {
            var name = variants.First().Procedure.Name;
            if (variants.Any(variant => variant.Procedure.HasErrors))
            {
                left.Add(new NotChecked($"strip and refit of {name}", "its text or its machine has errors", variants.Key));
            }
            else if (variants.Any(variant => !variant.Outcome.IsStripSound))
            {
                left.Add(new NotChecked($"refit of {name}", "its strip cannot be done as written", variants.Key));
            }
            else if (variants.Any(variant => !variant.IsProven))
            {
                left.Add(new NotChecked($"workshop rules about the steps of {name}", "it is not proven", variants.Key));
            }
        }

        if (report.LeftCount is { } untouched)
        {
            left.Add(new NotChecked(string.Create(CultureInfo.InvariantCulture, $"{untouched} procedures"), "no change has touched them", Place: null));
        }

        var off = RuleCatalog.All.Where(rule => report.Settings.Everywhere.SeverityOf(rule.Info) is null).Select(rule => rule.Info.Code).ToList();
        if (off.Count > 0)
        {
            left.Add(new NotChecked($"what is for {string.Join(", ", off)} to find", "the settings have switched it off", Place: null));
        }

        return left.ToImmutable();
    }
}
