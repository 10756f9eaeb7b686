using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Notes joints and their covers in an outline.</summary>
internal sealed class JointOutlines(SymbolLookup lookup, List<OutlineItem> items, FindingSink sink)
{
    /// <summary>Notes a joint, and its covers after it.</summary>
    public void Add(JointSyntax joint, BindingPlace place, int part, OptionNames options)
    {
        if (part < 0)
        {
            sink.Report(JointOutsidePart.At(joint, place.At(joint.Span)), place);
        }

        var role = joint.Keyword.Text switch
        {
            "wired" => JointRole.Wired,
            "piped" => JointRole.Piped,
            _ => JointRole.Held,
        };
        Add(OutlineSort.Joint, role, joint.Count, joint.Kind, joint.Name, PropertyPlaces.Of(joint.Clauses, place, options, null, sink), place, part, -1, options);
    }

    /// <summary>Notes the name of a cover that stands where none may stand.</summary>
    public void AddAstray(CoverSyntax cover, BindingPlace place, OptionNames options) =>
        Add(OutlineSort.Cover, JointRole.Cover, cover.Count, cover.Kind, cover.Name, [], place, -1, -1, options, IsLock(cover));

    private void Add(
        OutlineSort sort,
        JointRole role,
        CountSyntax count,
        WordSyntax kind,
        ReferenceSyntax name,
        IEnumerable<(PropertySyntax Property, BindingPlace Place)> clauses,
        BindingPlace place,
        int part,
        int over,
        OptionNames options,
        bool isLock = false)
    {
        var canonical = CanonicalName.Of(name, place.Bindings);
        if (canonical.Length == 0)
        {
            sink.LoseNames();
        }

        var item = new OutlineItem
        {
            Sort = sort,
            Name = canonical,
            Title = CanonicalName.Words(canonical),
            Reference = name,
            Place = place,
            Parent = part,
            Over = over,
            Role = role,
            Count = Counts.Bind(count, "a joint", place, sink) ?? 1,
            Kind = KindOf(kind, role, isLock, place),
            IsLock = isLock,
        };
        var index = items.Count;
        items.Add(item);
        foreach (var (clause, where) in clauses)
        {
            item.Members.Add(new OutlineMember(clause, where));
            if (clause is CoverSyntax cover)
            {
                var inner = PropertyPlaces.Of(cover.Clauses, where, options, null, sink);
                Add(OutlineSort.Cover, JointRole.Cover, cover.Count, cover.Kind, cover.Name, inner, where, part, index, options, IsLock(cover));
            }
        }
    }

    private static bool IsLock(CoverSyntax cover) => cover.Keyword.Text == "locked";

    private Kind KindOf(WordSyntax word, JointRole role, bool isLock, BindingPlace place)
    {
        if (lookup.Find<KindSymbol>(word, WantedKinds(role, isLock), place, sink) is { Kind: { } kind } symbol)
        {
            if (Fits(kind.Category, role, isLock))
            {
                return kind;
            }

            sink.Report(WrongKindForJoint.At(kind, role, isLock, place.At(word.Span)), place);
            return kind with { Category = KindCategory.Unknown };
        }

        return new Kind(word.Text, AuthorText.Words(word.Text), KindCategory.Unknown, place.At(word.Span));
    }

    private static string WantedKinds(JointRole role, bool isLock) => role switch
    {
        JointRole.Wired => "connector",
        JointRole.Piped => "line",
        JointRole.Cover => isLock ? "clip or bond" : "clip",
        _ => "fastener, clip or bond",
    };

    private static bool Fits(KindCategory category, JointRole role, bool isLock) => role switch
    {
        JointRole.Wired => category == KindCategory.Connector,
        JointRole.Piped => category == KindCategory.Line,
        JointRole.Cover => category == KindCategory.Clip || (isLock && category == KindCategory.Bond),
        _ => category is KindCategory.Fastener or KindCategory.Clip or KindCategory.Bond,
    };
}
