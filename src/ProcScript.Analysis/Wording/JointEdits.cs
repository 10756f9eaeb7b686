using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>Edits that add a clause to a joint. All want a look: which of several is true only the author knows.</summary>
internal static class JointEdits
{
    private const int MostOffered = 3;

    /// <summary>Writes a clause right behind the name of the joint.</summary>
    public static Fix Insert(Joint joint, string clause) => new(
        $"Insert `{clause}`",
        FixGrade.NeedsLook,
        [new TextEdit(new SourceSpan(joint.Declared.Path, new TextSpan(joint.Declared.Span.End, 0)), $" {clause}")]);

    /// <summary>Writes that there is none; or, in its stead, each of what it could be, where that is not a long list.</summary>
    public static IEnumerable<Fix> Answers(Joint joint, string word, IReadOnlyCollection<MachineItem> items) =>
        (items.Count <= MostOffered ? items.Select(item => item.Name) : []).Append("none").Select(name => Insert(joint, $"{word} {name}"));
}
