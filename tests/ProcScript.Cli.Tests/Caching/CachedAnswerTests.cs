using CsCheck;
using ProcScript.Cli.Caching;

namespace ProcScript.Cli.Tests.Caching;

public sealed class CachedAnswerTests
{
    private static readonly Gen<string> Word = Gen.String[Gen.Char["abc 7/.é\\"], 0, 12];

    private static readonly Gen<CachedAnswer> Answer = Gen.Select(
        Gen.Select(Word, Word, Gen.Bool, (path, digest, isFigure) => new CachedSource(path, digest.Replace(' ', '-'), isFigure)).Array[0, 6],
        Gen.Int[0, 1],
        Gen.String[Gen.Char["ab\n é"], 0, 40],
        (sources, code, text) => new CachedAnswer("question", [.. sources], (ExitCode)code, text));

    [Fact]
    public void What_is_written_is_read_again() => Answer.Sample(answer =>
    {
        var read = CachedAnswer.Read(answer.Write());

        Assert.NotNull(read);
        Assert.Equal((answer.Question, answer.Code, answer.Text), (read.Question, read.Code, read.Text));
        Assert.Equal(answer.Sources, read.Sources);
    });

    [Fact]
    public void A_file_that_was_cut_off_is_no_answer() => Gen.Select(Answer, Gen.Double.Unit).Sample((answer, share) =>
    {
        var file = answer.Write();
        Assert.Null(CachedAnswer.Read(file[..(int)(share * file.Length)]));
    });

    [Fact]
    public void A_file_with_another_bit_is_no_answer() => Gen.Select(Answer, Gen.Double.Unit, Gen.Int[0, 6]).Sample((answer, share, bit) =>
    {
        var file = answer.Write().ToCharArray();
        file[(int)(share * file.Length)] ^= (char)(1 << bit);
        Assert.Null(CachedAnswer.Read(new string(file)));
    });

    [Fact]
    public void Any_other_file_is_no_answer() => Gen.String.Sample(text => Assert.Null(CachedAnswer.Read(text)));
}
