using System.Text;

namespace ProcScript.LanguageServer.Tests.Samples;

/// <summary>A folder of its own for one test; its name has a blank and letters outside ASCII, as users' folders do.</summary>
internal sealed class TemporaryLibrary : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("procscript tëst ");

    public string Path => _folder.FullName;

    public string this[string path] => System.IO.Path.Combine(Path, path);

    public TemporaryLibrary With(string path, string content)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(this[path])!);
        File.WriteAllText(this[path], content, Utf8);
        return this;
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
