namespace WitnessMark.Stores.Intake;

/// <summary>The words under which people head the columns of a parts list, in English and German.</summary>
static class ColumnNames
{
    static readonly Dictionary<string, ListField> Known = new[]
    {
        (ListField.System, "system group section area category hauptgruppe"),
        (ListField.Assembly, "assembly subassembly assy subassy unit subgroup baugruppe"),
        (ListField.Part, "part partname name description desc partdescription itemdescription component title benennung bezeichnung teil teilename"),
        (ListField.Reference, "reference ref refs refno partno partnumber partnos partref pn number no item itemno itemnumber illustration illus illno fig figure figno plate plateno catno cataloguenumber catalogueno makersno makersnumber code teilenr teilenummer artikelnr artikelnummer bestellnr"),
        (ListField.Hand, "hand side lhrh lr handed seite"),
        (ListField.Quantity, "quantity qty off nooff numberoff count pcs pieces each pervehicle percar noreqd noperset required reqd menge stück stückzahl anzahl"),
        (ListField.Condition, "condition state asfound notes note remarks comment comments bemerkung bemerkungen zustand"),
        (ListField.Route, "route"),
        (ListField.Reason, "reason why"),
        (ListField.Decided, "decided decidedon"),
    }.SelectMany(k => k.Item2.Split(' ').Select(word => (Word: word, Field: k.Item1))).ToDictionary(k => k.Word, k => k.Field);

    /// <summary>Signs, blanks and capitals do not count: "Part No." is "partno".</summary>
    public static ListField Read(string head) =>
        Known.GetValueOrDefault(string.Concat(head.Where(char.IsLetter)).ToLowerInvariant(), ListField.Ignored);
}
