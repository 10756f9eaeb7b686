using CsCheck;
using ProcScript.Analysis.Prose;

namespace ProcScript.Analysis.Tests.Prose;

public sealed class SentenceTests
{
    [Theory]
    [InlineData("Lift it. Turn it.", "Lift it.|Turn it.")]
    [InlineData("Torque to 9.5 N.m. Then wait.", "Torque to 9.5 N.m.|Then wait.")]
    [InlineData("Use a lever, e.g. the blue one. Lift.", "Use a lever, e.g. the blue one.|Lift.")]
    [InlineData("Open valve No. 3 by approx. two turns.", "Open valve No. 3 by approx. two turns.")]
    [InlineData("Is it a no. Then stop.", "Is it a no.|Then stop.")]
    [InlineData("Clean pins, clips, etc. Then wait.", "Clean pins, clips, etc.|Then wait.")]
    [InlineData("Clean pins, etc. with a brush.", "Clean pins, etc. with a brush.")]
    [InlineData("Wait 5 min. The gas cools.", "Wait 5 min.|The gas cools.")]
    [InlineData("Is it hot? Wait! \"Cold.\" Go on", "Is it hot?|Wait!|\"Cold.\"|Go on")]
    [InlineData("In this order:\n- the left\n- the right one. Both.", "In this order:|the left|the right one.|Both.")]
    [InlineData("1. Lift it.\n2. Turn it.", "Lift it.|Turn it.")]
    [InlineData("A line\nthat goes on. Next.", "A line\nthat goes on.|Next.")]
    [InlineData("**Stop.** Then go.", "**Stop.**|Then go.")]
    [InlineData("It is 3.5 times 4. Done.", "It is 3.5 times 4.|Done.")]
    [InlineData("停。走。", "停。|走。")]
    [InlineData("...", "")]
    [InlineData("", "")]
    public void A_text_falls_into_its_sentences(string text, string sentences) =>
        Assert.Equal(sentences, string.Join('|', SentenceSplitter.Split(text)));

    [Theory]
    [InlineData("Lift the {side} lid.", 4)]
    [InlineData("Torque to 22 N.m.", 3)]
    [InlineData("Torque to 22 ± 2 N.m.", 4)]
    [InlineData("Use a 20 mm trim-lever (0.5 mm thick).", 6)]
    [InlineData("See [the long sheet](https://example.com/a b/c) first.", 5)]
    [InlineData("**Never** pull the *wires*.", 4)]
    [InlineData("Push – and wait — then go…", 5)]
    [InlineData("The counter-hold's 3/8 in socket", 4)]
    public void Words_are_counted_as_simplified_english_counts_them(string text, int words) =>
        Assert.Equal(words, Assert.Single(SentenceSplitter.Split(text)).Words.Length);

    [Fact]
    public void Paragraphs_end_at_an_empty_line() =>
        Assert.Equal([0, 0, 1], SentenceSplitter.Split("One. Two.\n\nThree.").Select(sentence => sentence.Paragraph));

    [Fact]
    public void Any_text_falls_into_sentences_that_follow_each_other() => Gen.Char[" .!?-*#1a\n\"()[]{}…°é"].Array[0, 60].Select(one => new string(one)).Sample(
        text =>
        {
            var at = 0;
            foreach (var sentence in SentenceSplitter.Split(text))
            {
                Assert.InRange(sentence.Start, at, sentence.End);
                Assert.NotEmpty(sentence.Words);
                foreach (var word in sentence.Words)
                {
                    Assert.InRange(word.Start, at, word.End - 1);
                    at = word.End;
                }

                Assert.InRange(sentence.End, at, text.Length);
                at = sentence.End;
            }
        },
        iter: 2000);
}
