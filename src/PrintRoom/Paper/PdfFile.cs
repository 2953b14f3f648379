using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>The objects of a PDF and how they are laid into a file (ISO 32000-1, 7.3 to 7.5).</summary>
sealed class PdfFile(bool compressed)
{
    readonly List<byte[]> _objects = [];

    /// <summary>Keeps a number for an object that is written later.</summary>
    public int Reserve()
    {
        _objects.Add([]);
        return _objects.Count;
    }

    public void Set(int number, string body) => _objects[number - 1] = Encoding.Latin1.GetBytes(body);

    public int Add(string body)
    {
        var number = Reserve();
        Set(number, body);
        return number;
    }

    public int AddStream(string content)
    {
        var data = Encoding.Latin1.GetBytes(content);
        if (compressed) data = Deflated(data);
        var head = $"<</Length {data.Length}{(compressed ? "/Filter/FlateDecode" : "")}>>\nstream\n";
        var number = Reserve();
        _objects[number - 1] = [.. Encoding.Latin1.GetBytes(head), .. data, .. "\nendstream"u8];
        return number;
    }

    public byte[] ToBytes(int catalog, int info)
    {
        var file = new MemoryStream();
        // The second line tells a mail program or the like that this is no plain text (7.5.2).
        file.Write([.. "%PDF-1.7\n%"u8, 0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);
        var offsets = new List<long>();
        for (var i = 0; i < _objects.Count; i++)
        {
            offsets.Add(file.Length);
            Write(file, $"{i + 1} 0 obj\n");
            file.Write(_objects[i]);
            Write(file, "\nendobj\n");
        }
        var id = Convert.ToHexString(SHA256.HashData(file.ToArray()).AsSpan(0, 16));
        var start = file.Length;
        Write(file, $"xref\n0 {_objects.Count + 1}\n0000000000 65535 f \n");
        foreach (var offset in offsets) Write(file, offset.ToString("D10", CultureInfo.InvariantCulture) + " 00000 n \n");
        Write(file, $"trailer\n<</Size {_objects.Count + 1}/Root {catalog} 0 R/Info {info} 0 R/ID[<{id}><{id}>]>>\nstartxref\n{start}\n%%EOF\n");
        return file.ToArray();
    }

    /// <summary>Any text as a string object: UTF-16 with its mark, in hexadecimal (7.9.2.2).</summary>
    public static string Text(string text) => $"<FEFF{Utf16(text)}>";

    public static string Utf16(string text) => Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text));

    static byte[] Deflated(byte[] data)
    {
        var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true)) zlib.Write(data);
        return packed.ToArray();
    }

    static void Write(MemoryStream file, string text) => file.Write(Encoding.Latin1.GetBytes(text));
}
