using System.Collections.Immutable;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Machines;

/// <summary>
/// An item of a machine as it stands in the text, once for every value of the <c>each</c> around it, whatever the variant.
/// </summary>
internal sealed class OutlineItem
{
    /// <summary>What it is.</summary>
    public required OutlineSort Sort { get; init; }

    /// <summary>Its name with its index; empty where the parser missed it.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>Its name in the text.</summary>
    public required ReferenceSyntax Reference { get; init; }

    /// <summary>Where it stands.</summary>
    public required BindingPlace Place { get; init; }

    /// <summary>The index, in the outline, of the part around it; -1 where there is none.</summary>
    public required int Parent { get; init; }

    /// <summary>Of a cover: the index, in the outline, of the joint that it hides; -1 otherwise.</summary>
    public int Over { get; init; } = -1;

    /// <summary>Of a cover: whether it locks the joint and does not hide it.</summary>
    public bool IsLock { get; init; }

    /// <summary>What stands inside it beside further items.</summary>
    public List<OutlineMember> Members { get; } = [];

    /// <summary>Of a joint: what it does.</summary>
    public JointRole Role { get; init; }

    /// <summary>Of a joint: how many there are; of a place: how many people work in it at once, 0 where that is a finding.</summary>
    public int Count { get; init; }

    /// <summary>Of a joint: its kind.</summary>
    public Kind? Kind { get; init; }

    /// <summary>Of a control: its positions.</summary>
    public ImmutableArray<string> Positions { get; init; } = [];

    /// <summary>The same as people call them.</summary>
    public ImmutableArray<string> PositionTitles { get; init; } = [];

    /// <summary>Of an energy, a fluid or a part: the first thing in its block; null where there is none.</summary>
    public SyntaxNode? First { get; init; }

    /// <summary>Where that stands.</summary>
    public SourceSpan? Block => First is null ? null : Place.At(First.Span);

    /// <summary>Where the name is declared.</summary>
    public SourceSpan Declared => Place.At(Reference.Span);
}

/// <summary>The sorts of items.</summary>
internal enum OutlineSort
{
    /// <summary>An energy.</summary>
    Energy,

    /// <summary>A fluid.</summary>
    Fluid,

    /// <summary>A control.</summary>
    Control,

    /// <summary>A part.</summary>
    Part,

    /// <summary>A joint.</summary>
    Joint,

    /// <summary>A cover.</summary>
    Cover,

    /// <summary>A place in which only so many people work at once.</summary>
    Place,
}

/// <summary>A property, or the way aside, of an item.</summary>
/// <param name="Node">The node.</param>
/// <param name="Place">Where it stands.</param>
internal readonly record struct OutlineMember(MemberSyntax Node, BindingPlace Place);
