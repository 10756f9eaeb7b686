using System.Collections.Immutable;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Says of a joint what hides it: new caps, with the steps that take them off, or a part that comes off before it anyway.</summary>
/// <param name="report">What a check of the library came to.</param>
/// <param name="cancellation">Ends the work.</param>
internal sealed class CoverJoint(LibraryReport report, CancellationToken cancellation)
{
    /// <summary>How many parts are offered; those that come off last before the joint come first.</summary>
    private const int MostParts = 2;

    private static readonly ImmutableArray<Verb> Opening = [Verb.Undo, Verb.Loosen, Verb.Release, Verb.Unplug, Verb.Disconnect, Verb.Cut];

    /// <summary>The refactorings of the joint whose head is at a place.</summary>
    public IEnumerable<Refactoring> At(SyntaxTree tree, TextSpan place)
    {
        foreach (var machine in tree.Root.Declarations.OfType<MachineSyntax>().Where(one => one.Span.Touches(place.Start)))
        {
            foreach (var joint in machine.DescendantsAndSelf().OfType<JointSyntax>().Where(one => one.Span.Start <= place.Start && place.End <= one.Name.Span.End && !one.Name.Name.IsMissing))
            {
                var behind = Parts(machine, joint).Select(part => Changed(
                    tree, machine, $"Cover it: behind `{part}`", [With(tree, joint, $"behind {part}", isInline: false)]));
                foreach (var change in behind.Append(joint.Clauses.Any(clause => clause is CoverSyntax) ? null : Capped(tree, machine, joint)).OfType<Refactoring>())
                {
                    yield return change;
                }
            }
        }
    }

    private Refactoring? Capped(SyntaxTree tree, MachineSyntax machine, JointSyntax joint)
    {
        var (name, count) = (CapName(machine, joint), joint.Count.Value);
        var kind = CapKind(tree);
        var written = kind?.Name ?? FreeKind();
        var indices = joint.Name.Written[joint.Name.Name.Text.Length..];
        List<TextEdit> edits = [With(tree, joint, $"covered by {count} {written} as {name}{indices}", isInline: true)];
        if (kind is null)
        {
            var newLine = EditedFile.NewLine(tree.Text);
            edits.Add(new TextEdit(
                new SourceSpan(tree.Text.Path, new TextSpan(SelectedSteps.WithComments(tree.Text, machine.Span.Start), 0)),
                $"clip {written} \"{written.Replace('_', ' ')}\"{newLine}{newLine}"));
        }

        foreach (var user in report.Library.Trees.Values)
        {
            edits.AddRange(user.Root.Declarations.OfType<ProcedureSyntax>()
                .Where(procedure => procedure.Machine.Text == machine.Name.Text)
                .SelectMany(procedure => Releases(user, procedure, joint.Name.Name.Text, name)));
        }

        return Changed(tree, machine, $"Cover it: {count} × `{written}` as `{name}`", edits);
    }

    /// <summary>A step that takes the caps off, before the first one of each index that opens the joint.</summary>
    private static IEnumerable<TextEdit> Releases(SyntaxTree tree, ProcedureSyntax procedure, string joint, string cap)
    {
        AlertSyntax[] alerts = [.. procedure.DescendantsAndSelf().OfType<AlertSyntax>()];
        return procedure.DescendantsAndSelf().OfType<ActionSyntax>()
            .Where(action => action.Target.Name.Text == joint && Opening.Any(verb => verb.ToString().Equals(action.Verb.Text, StringComparison.OrdinalIgnoreCase)))
            .DistinctBy(action => action.Target.Written)
            .Select(action =>
            {
                // What warns of the step stays with it.
                var start = action.Span.Start;
                foreach (var alert in alerts.Reverse().Where(alert => alert.Span.End <= action.Span.Start))
                {
                    if (!string.IsNullOrWhiteSpace(tree.Text.Content[alert.Span.End..start]))
                    {
                        break;
                    }

                    start = alert.Span.Start;
                }

                return new TextEdit(
                    new SourceSpan(tree.Text.Path, new TextSpan(SelectedSteps.WithComments(tree.Text, start), 0)),
                    $"release {cap}{action.Target.Written[joint.Length..]}{EditedFile.NewLine(tree.Text)}");
            });
    }

    /// <summary>The parts that are off or aside in every proven procedure before the joint is opened, and that neither hold it nor hide it yet.</summary>
    private IEnumerable<string> Parts(MachineSyntax machine, JointSyntax joint)
    {
        List<List<Part>>? orders = null;
        foreach (var one in report.Procedures.Where(one => one.IsProven && one.Procedure.Machine.Name == machine.Name.Text))
        {
            if (one.Outcome.Strip is not { } run)
            {
                continue;
            }

            var opened = run.Actions.FirstOrDefault(action => Opening.Contains(action.Verb) && action.Target is Joint target && CanonicalName.Base(target.Name) == joint.Name.Name.Text);
            if (opened is { Target: Joint { Owner: var part } })
            {
                (orders ??= []).Add([.. run.Actions.TakeWhile(action => action != opened)
                    .Where(action => action.Verb is Verb.Remove or Verb.Aside)
                    .Select(action => action.Target).OfType<Part>()
                    .Where(before => !IsAround(before, part) && !IsAround(part, before))]);
            }
        }

        var named = joint.DescendantsAndSelf().OfType<ReferenceSyntax>().Select(reference => reference.Written).ToHashSet(StringComparer.Ordinal);
        return orders is null
            ? []
            : orders[0].AsEnumerable().Reverse().Select(part => part.Name).Where(name => orders.TrueForAll(order => order.Exists(part => part.Name == name)))
                .Select(CanonicalName.Written).Where(name => !named.Contains(name)).Distinct(StringComparer.Ordinal).Take(MostParts);
    }

    private static bool IsAround(Part outer, Part? inner)
    {
        for (var part = inner; part is not null; part = part.Parent)
        {
            if (part == outer)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The edits laid out, where the machine's procedures are as good after them as before; else null.</summary>
    private Refactoring? Changed(SyntaxTree tree, MachineSyntax machine, string title, IReadOnlyCollection<TextEdit> edits)
    {
        var laidOut = ImmutableArray.CreateBuilder<TextEdit>();
        var after = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in edits.GroupBy(edit => edit.Place.Path).OrderBy(file => file.Key, StringComparer.Ordinal))
        {
            var before = report.Library.Trees[file.Key];
            if (!before.Findings.IsEmpty || EditedFile.LaidOut(before, TextEdits.Apply(before.Text.Content, file.OrderBy(edit => edit.Place.Span.Start))) is not { } text)
            {
                return null;
            }

            after[file.Key] = text;
            laidOut.Add(EditedFile.Difference(before.Text, text));
        }

        return Keeps(tree, machine, after) ? new Refactoring(title, RefactoringSort.Rewrite, laidOut.ToImmutable()) : null;
    }

    private bool Keeps(SyntaxTree tree, MachineSyntax machine, Dictionary<string, string> after)
    {
        var paths = report.Procedures.Where(one => one.Procedure.Machine.Name == machine.Name.Text).SelectMany(one => one.Procedure.Files)
            .Concat(after.Keys).Append(tree.Text.Path).ToHashSet(StringComparer.Ordinal);
        LibraryNames names = new(report.Library.Trees, new KnownNames());
        paths.UnionWith(paths.SelectMany(names.Reach).ToList());
        var (before, now) = (Check([]), Check(after));
        var proven = now.Procedures.Where(one => one.IsProven).Select(one => one.Key).ToHashSet();
        return Errors(now) <= Errors(before) && before.Procedures.All(one => !one.IsProven || proven.Contains(one.Key));

        LibraryReport Check(Dictionary<string, string> edited) => LibraryCheck.Judge(
            new MemorySourceStore(paths.Where(report.Library.Trees.ContainsKey).Select(path => KeyValuePair.Create(path, edited.GetValueOrDefault(path) ?? report.Library.Trees[path].Text.Content))),
            report.Settings,
            cancellation);

        static int Errors(LibraryReport judged) => judged.Findings.Count(reported => reported.Severity == Severity.Error);
    }

    /// <summary>A joint with one more clause: on its line where that may be, else in its block.</summary>
    private static TextEdit With(SyntaxTree tree, JointSyntax joint, string clause, bool isInline)
    {
        var end = joint.Span.End;
        var hasBlock = tree.Text.Content[end - 1] == '}' && joint.Clauses.All(inner => inner.Span.End < end);
        return hasBlock ? new TextEdit(new SourceSpan(tree.Text.Path, new TextSpan(end - 1, 0)), EditedFile.NewLine(tree.Text) + clause + EditedFile.NewLine(tree.Text))
            : isInline ? new TextEdit(new SourceSpan(tree.Text.Path, new TextSpan(end, 0)), " " + clause)
            : new TextEdit(new SourceSpan(tree.Text.Path, new TextSpan(end, 0)), $" {{ {clause} }}");
    }

    /// <summary><c>seat_bolts</c> have <c>seat_caps</c>.</summary>
    private static string CapName(MachineSyntax machine, JointSyntax joint)
    {
        var name = joint.Name.Name.Text;
        var stem = name.LastIndexOf('_') is > 0 and var cut ? name[..cut] : name;
        var taken = machine.DescendantsAndSelf().OfType<ReferenceSyntax>().Select(reference => reference.Name.Text).ToHashSet(StringComparer.Ordinal);
        return Free(stem + (joint.Count.Value > 1 ? "_caps" : "_cap"), taken.Contains);
    }

    /// <summary>A clip in sight that is a cap by its name.</summary>
    private Kind? CapKind(SyntaxTree tree)
    {
        var reach = new LibraryNames(report.Library.Trees, new KnownNames()).Reach(tree.Text.Path);
        return report.Library.Kinds.Where(kind => kind.Category == KindCategory.Clip && reach.Contains(kind.Declared.Path))
            .FirstOrDefault(kind => kind.Name.Split('_').Any(word => word is "cap" or "caps" or "cover"));
    }

    private string FreeKind() => Free(
        "snap_on_cap",
        name => report.Library.Trees.Values.Any(one => one.Root.Declarations.Any(declaration => declaration.Name.Text == name)));

    private static string Free(string name, Func<string, bool> isTaken)
    {
        var free = name;
        for (var number = 2; isTaken(free); number++)
        {
            free = $"{name}_{number}";
        }

        return free;
    }
}
