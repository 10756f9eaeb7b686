using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Whole;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>A tool, a supply, a certificate or a kind stands in the catalog, or a place in a machine, and nothing in the library names it.</summary>
public sealed class UnusedEntry : LibraryRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6001", "unused-entry", "A catalog entry that nothing uses", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A tool, a supply, a certificate or a kind stands in the catalog, and no other declaration of the library names it; or nothing is `in` a place of a machine. Tools of "
            + "the setting `houseTools` need no user. Like all rules of the library it speaks only where the folder is "
            + "checked that has the `procscript.json`, with all below it.",
        Why: "Whoever looks for the right bolt has to read past it, and it is kept up to date for nobody. Where it waits for "
            + "a machine to come, allow it and say so.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"
            clip cap "snap-on cap"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view)
    {
        var house = view.Settings.Get(SettingsTable.HouseTools).ToHashSet(StringComparer.OrdinalIgnoreCase);
        // A torque wrench with a range is taken for the torques that it covers, and a crowfoot for the spanner of its size; nobody names them.
        var wrenches = view.Tools.Where(tool => tool.Range is not null || Crowfoots.IsCrowfoot(tool)).Select(tool => tool.Declared).ToHashSet();
        var places =
            from declared in view.Entries
            where declared.Declaration is MachineSyntax && view.IsLive(declared.Path)
            from area in declared.Declaration.DescendantsAndSelf().OfType<PlaceSyntax>()
            where area.Name.Name.Span.Length > 0 && !view.IsMentioned(area.Name.Name.Text)
            select new Finding(Id, $"nothing stands in the place `{area.Name.Name.Text}`", new SourceSpan(declared.Path, area.Name.Name.Span), "is named nowhere else")
            {
                Help = $"write `in {area.Name.Name.Text}` at what one works on there, or take it out",
            };
        return places.Concat(
            from declared in view.Entries
            let entry = declared.Declaration as CatalogSyntax
            where entry is not null && view.IsLive(declared.Path)
            where entry.Name.Span.Length > 0 && !view.IsMentioned(entry.Name.Text)
            where !house.Contains(entry.Name.Text) && !house.Contains(entry.Title?.Value ?? entry.Name.Text)
            let place = new SourceSpan(declared.Path, entry.Name.Span)
            where !wrenches.Contains(place)
            select new Finding(Id, $"nothing in the library uses `{entry.Name.Text}`", place, "is named nowhere else")
            {
                Help = "take it out, or allow it and say what it waits for",
            });
    }
}
