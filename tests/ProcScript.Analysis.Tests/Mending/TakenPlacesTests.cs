using CsCheck;
using ProcScript.Analysis.Mending;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Mending;

public sealed class TakenPlacesTests
{
    private static readonly Gen<TextEdit> Edit = Gen.Select(Gen.Int[0, 30], Gen.Int[0, 4], (start, length) =>
        new TextEdit(new SourceSpan("x.proc", new TextSpan(start, length)), "[" + start + "]"));

    /// <summary>However they are taken: in any order they give one text, and the next one would have met one of them.</summary>
    [Fact]
    public void What_is_taken_lies_apart_and_what_is_not_would_not() => Edit.Array[1, 12].Sample(edits =>
    {
        var places = new TakenPlaces();
        var taken = new List<TextSpan>();
        foreach (var edit in edits)
        {
            var span = edit.Place.Span;
            var meets = taken.Exists(other => Enumerable.Range(span.Start, span.Length).Intersect(Enumerable.Range(other.Start, other.Length)).Any()
                || ((span.Length == 0 || other.Length == 0) && span.Start <= other.End && other.Start <= span.End));
            Assert.Equal(!meets, places.TryTake(new Fix("", FixGrade.Safe, [edit])));
            if (!meets)
            {
                taken.Add(span);
            }
        }
    });
}
