using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Model.Names;
using ProcScript.Analysis.Refactoring;
using ProcScript.Model;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax;

namespace ProcScript.Analysis.Auditing;

/// <summary>Every single mistake of the usual sorts that can be made in a library.</summary>
internal static class MistakeSeeds
{
    /// <summary>What is said of an item and has a bearing on what may be done when, but for conditions.</summary>
    private static readonly FrozenSet<string> FactWords =
        FrozenSet.ToFrozenSet(["on", "carries", "to", "after", "renew with", "temporary"], StringComparer.Ordinal);

    /// <summary>The mistakes in some files, in the order of files and text.</summary>
    /// <param name="library">The library.</param>
    /// <param name="isAskedAbout">The files.</param>
    public static IEnumerable<Mistake> In(Library library, Predicate<string> isAskedAbout)
    {
        var places = ItemPlaces.Of(library);
        foreach (var tree in library.Trees.Values.Where(tree => isAskedAbout(tree.Text.Path)))
        {
            foreach (var declared in tree.Root.Declarations)
            {
                var seeds = declared switch
                {
                    MachineSyntax machine => new FileSeeds(tree, places, machine.Name.Text, machine.Name.Text, InProcedure: false).OfMachine(machine),
                    ProcedureSyntax procedure => new FileSeeds(tree, places, procedure.Name.Text, procedure.Machine.Text, InProcedure: true).OfProcedure(procedure),
                    _ => [],
                };
                foreach (var seed in seeds)
                {
                    yield return seed;
                }
            }
        }
    }

    private sealed record FileSeeds(SyntaxTree Tree, ItemPlaces Places, string Owner, string Machine, bool InProcedure)
    {
        public IEnumerable<Mistake> OfProcedure(ProcedureSyntax procedure)
        {
            var variables = procedure.Parameters.ToImmutableDictionary(parameter => parameter.Name.Text, parameter => parameter.Values);
            return procedure.Items.SelectMany(item => Steps(item, [procedure], variables));
        }

        public IEnumerable<Mistake> OfMachine(MachineSyntax machine) =>
            machine.Members.SelectMany(member => Facts(member, of: null, ImmutableDictionary<string, ValuesSyntax>.Empty));

        private IEnumerable<Mistake> Steps(SyntaxNode node, ImmutableStack<SyntaxNode> around, ImmutableDictionary<string, ValuesSyntax> variables)
        {
            if (node is ActionSyntax or DoSyntax or DiscardSyntax)
            {
                var last = node switch
                {
                    ActionSyntax action => (SyntaxNode?)action.Position ?? action.Target,
                    DiscardSyntax discard => discard.Target,
                    _ => node,
                };
                yield return Make(MistakeSort.StepLeftOut, Emptied(node, around).Span, "", Written(TextSpan.FromBounds(node.Span.Start, last.Span.End)));
                foreach (var swap in Swaps((node as ActionSyntax)?.Target ?? (node as DiscardSyntax)?.Target, variables))
                {
                    yield return swap;
                }

                yield break;
            }

            foreach (var mistake in SelectedSteps.BodyOf(node).SelectMany(child => Steps(child, around.Push(node), In(node, variables))))
            {
                yield return mistake;
            }
        }

        private IEnumerable<Mistake> Facts(SyntaxNode node, string? of, ImmutableDictionary<string, ValuesSyntax> variables)
        {
            if (FactsOf(node) is { } facts)
            {
                foreach (var mistake in facts.SelectMany(One))
                {
                    yield return mistake;
                }

                yield break;
            }

            var inside = (node as PartSyntax)?.Name ?? (node as JointSyntax)?.Name ?? (node as CoverSyntax)?.Name
                ?? (node as EnergySyntax)?.Name ?? (node as FluidSyntax)?.Name ?? (node as ControlSyntax)?.Name;
            foreach (var mistake in node.Children.SelectMany(child => Facts(child, inside?.Written ?? of, In(node, variables))))
            {
                yield return mistake;
            }

            IEnumerable<Mistake> One(Fact fact)
            {
                var words = Written(fact.Said);
                if (fact.Said != node.Span)
                {
                    words = $"{(node is AsideSyntax ? "aside needs" : Written(TextSpan.FromBounds(node.Span.Start, fact.First)))} {words}";
                }

                var (item, named) = (of is null ? "" : CanonicalName.Base(of), (ImmutableArray<string>)[.. fact.Names.Select(name => name.Name.Text)]);
                yield return Make(MistakeSort.FactLeftOut, fact.TakenOut, "", of is null ? words : $"{of} {words}") with { Item = item, Named = named };
                foreach (var swap in fact.Names.SelectMany(name => Swaps(name, variables)))
                {
                    yield return swap with { Words = of is null ? swap.Words : $"{of}: {swap.Words}", Item = item, Named = named };
                }
            }
        }

        /// <summary>The facts that a property states; null where it is no such property.</summary>
        private static IEnumerable<Fact>? FactsOf(SyntaxNode node) => node switch
        {
            NeedsPropertySyntax needs => Each(needs.Span, needs.Needs),
            // Without its last need it would be another sentence.
            AsideSyntax { Needs.Length: > 1 } aside => Each(aside.Span, aside.Needs),
            NamesPropertySyntax names when FactWords.Contains(names.Keyword.Text) => [new Fact(names.Span, names.Span, names.Span.Start, names.Names)],
            FlagPropertySyntax flag when FactWords.Contains(flag.Keyword.Text) => [new Fact(flag.Span, flag.Span, flag.Span.Start, [])],
            _ => null,
        };

        /// <summary>The needs of one sentence. The only one goes with its word, one of several with the comma or the <c>or</c> beside it.</summary>
        private static IEnumerable<Fact> Each(TextSpan whole, ImmutableArray<NeedSyntax> needs)
        {
            for (var at = 0; at < needs.Length; at++)
            {
                var isLast = at + 1 == needs.Length;
                // An alternative goes with the 'or' before it: 'a or b, c' without b is 'a, c'.
                var takenOut = needs.Length == 1 ? whole
                    : isLast || needs[at].IsAlternative ? TextSpan.FromBounds(needs[at - 1].Span.End, needs[at].Span.End)
                    : TextSpan.FromBounds(needs[at].Span.Start, needs[at + 1].Span.Start);
                yield return new Fact(takenOut, needs.Length == 1 ? whole : needs[at].Span, needs[0].Span.Start, [needs[at].Item]);
            }
        }

        /// <summary>The same name at another place: for a fixed one another that there is, for a variable one that it may be.</summary>
        private IEnumerable<Mistake> Swaps(ReferenceSyntax? reference, ImmutableDictionary<string, ValuesSyntax> variables)
        {
            for (var at = 0; reference is not null && at < reference.Indices.Length; at++)
            {
                var index = reference.Indices[at];
                var other = variables.TryGetValue(index.Text, out var values)
                    ? values.Values.FirstOrDefault()?.Text
                    : Places.Other(Machine, reference, at, variables.ContainsKey);
                if (other is not null && other != index.Text)
                {
                    yield return Make(MistakeSort.OtherPlace, index.Span, other, $"{Written(reference, at, other)} instead of {reference.Written}");
                }
            }
        }

        /// <summary>What goes with a step: a block that has nothing but it.</summary>
        private static SyntaxNode Emptied(SyntaxNode step, ImmutableStack<SyntaxNode> around)
        {
            foreach (var block in around)
            {
                if (block is ProcedureSyntax || SelectedSteps.BodyOf(block).Length > 1)
                {
                    break;
                }

                step = block;
            }

            return step;
        }

        private static ImmutableDictionary<string, ValuesSyntax> In(SyntaxNode node, ImmutableDictionary<string, ValuesSyntax> variables) =>
            node is EachSyntax each ? variables.SetItem(each.Variable.Text, each.Values) : variables;

        private static string Written(ReferenceSyntax reference, int at, string other) =>
            CanonicalName.Written(reference.Name.Text, [.. reference.Indices.Select((index, i) => i == at ? other : index.Text)]);

        private Mistake Make(MistakeSort sort, TextSpan span, string replacement, string words) => new(
            sort, new SourceSpan(Tree.Text.Path, span), Tree.Text.LineAt(span.Start) + 1, replacement, Owner, InProcedure, Machine, words);

        /// <summary>A stretch of the text on one line.</summary>
        private string Written(TextSpan span) =>
            string.Join(' ', Tree.Text.Slice(span).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        /// <summary>Something that is said of an item.</summary>
        /// <param name="TakenOut">What goes with it.</param>
        /// <param name="Said">It itself.</param>
        /// <param name="First">Where the first of several that stand behind one word begins.</param>
        /// <param name="Names">The items that it names.</param>
        private sealed record Fact(TextSpan TakenOut, TextSpan Said, int First, ImmutableArray<ReferenceSyntax> Names);
    }
}
