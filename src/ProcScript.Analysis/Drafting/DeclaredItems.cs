using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax;

namespace ProcScript.Analysis.Drafting;

/// <summary>The items that a machine declares by itself.</summary>
internal sealed class DeclaredItems
{
    private readonly Dictionary<string, SyntaxNode> _items = new(StringComparer.Ordinal);

    /// <summary>Those of a machine; none where there is no machine yet.</summary>
    /// <param name="tree">The file that declares it.</param>
    /// <param name="machine">The machine.</param>
    public DeclaredItems(SyntaxTree? tree, MachineSyntax? machine)
    {
        (Tree, Machine) = (tree, machine);
        foreach (var node in machine?.DescendantsAndSelf() ?? [])
        {
            var name = node switch
            {
                PartSyntax part => part.Name.Name.Text,
                JointSyntax joint => joint.Name.Name.Text,
                CoverSyntax cover => cover.Name.Name.Text,
                EnergySyntax energy => energy.Name.Name.Text,
                FluidSyntax fluid => fluid.Name.Name.Text,
                ControlSyntax control => control.Name.Name.Text,
                PlaceSyntax place => place.Name.Name.Text,
                OptionSyntax option => option.Name.Text,
                _ => "",
            };
            if (name.Length > 0)
            {
                _items.TryAdd(name, node);
            }
        }
    }

    /// <summary>The file that declares the machine.</summary>
    public SyntaxTree? Tree { get; }

    /// <summary>The machine.</summary>
    public MachineSyntax? Machine { get; }

    /// <summary>Whether an item of this name is declared, whatever its index.</summary>
    public bool Has(string name) => _items.ContainsKey(CanonicalName.Base(name));

    /// <summary>The part of this name, whatever its index; null where there is none.</summary>
    public PartSyntax? Part(string name) => _items.GetValueOrDefault(CanonicalName.Base(name)) as PartSyntax;

    /// <summary>The joint of this name; null where there is none.</summary>
    public JointSyntax? Joint(string name) => _items.GetValueOrDefault(CanonicalName.Base(name)) as JointSyntax;

    /// <summary>The names of all parts, without index.</summary>
    public IEnumerable<string> Parts => _items.Where(item => item.Value is PartSyntax).Select(item => item.Key);

    /// <summary>Whether an item of this name is declared and of a sort.</summary>
    public bool IsA<TNode>(string name)
        where TNode : SyntaxNode => _items.GetValueOrDefault(CanonicalName.Base(name)) is TNode;
}
