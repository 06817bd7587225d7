/**
 * Pedigrees as tables: CSV files by RFC 4180, in UTF-8 with or without a byte order mark, with one header line.
 *
 * <p>{@link org.geneticsrules.table.PedigreeTable} is the door. Each row is about one individual; or, if its id is empty, about as many
 * kits of a litter as it counts, or about a litter alone. The columns, in any order; any may be left out, but {@code id} only if there is
 * {@code count}:
 *
 * <table>
 * <caption>Columns and their words, which {@link org.geneticsrules.table.ColumnNames} can change</caption>
 * <tr><th>column</th><th>what stands there</th></tr>
 * <tr><td>{@code id}</td><td>id of the individual; the others are those of its litter, its parents and so on</td></tr>
 * <tr><td>{@code count}</td><td>in a row without an id: how many kits of its litter it is about</td></tr>
 * <tr><td>{@code sex}</td><td>{@code female}, {@code male} or nothing</td></tr>
 * <tr><td>{@code born}</td><td>date of birth</td></tr>
 * <tr><td>{@code population}</td><td>where it, or its parent that is not recorded, comes from</td></tr>
 * <tr><td>{@code fertility}</td><td>{@code unknown}, {@code fertile}, {@code sterile}, {@code vasectomised} or {@code neutered}</td></tr>
 * <tr><td>{@code litter}</td><td>id of its litter</td></tr>
 * <tr><td>{@code dam}, {@code sire}, {@code foster dam}</td><td>ids</td></tr>
 * <tr><td>{@code litter born}</td><td>date of birth of the litter</td></tr>
 * <tr><td>{@code kits born}, {@code kits scored}</td><td>whole numbers</td></tr>
 * <tr><td>{@code ascertainment}</td><td>how the litter came to be among the records: {@code complete}, {@code at least one}, {@code
 *     probands} or {@code parents chosen}; see {@link org.geneticsrules.pedigree.Ascertainment}</td></tr>
 * <tr><td>{@code ascertainment sign}</td><td>what brought it to notice, as a look: {@code eye colour: pink}</td></tr>
 * <tr><td>{@code ascertainment weeks}, {@code ascertainment moult}, {@code ascertainment season}, {@code ascertainment light}</td><td>when,
 *     and in which light, that was seen</td></tr>
 * <tr><td>{@code ascertainment chance}, {@code probands}</td><td>of probands: the chance that a kit which shows the sign is brought to notice,
 *     and how many were</td></tr>
 * <tr><td>{@code sire share}</td><td>the chance that the {@code sire} of this row is the sire</td></tr>
 * <tr><td>{@code sire population}</td><td>where a candidate who is not recorded comes from</td></tr>
 * <tr><td>{@code sire of}</td><td>{@code litter} or {@code each kit}: what the shares are of</td></tr>
 * <tr><td>{@code seen on}, {@code weeks}, {@code moult}, {@code season}</td><td>when the traits of this row were seen</td></tr>
 * <tr><td>{@code light}, {@code seen by}</td><td>the light in which they were seen, and who looked</td></tr>
 * <tr><td>{@code called}, {@code called in}, {@code facet}</td><td>a name that it was called then, whose name that is (a vocabulary or a
 *     region), and what it speaks of where that is not clear</td></tr>
 * <tr><td>{@code trait: hue} and so on</td><td>the state of the trait named</td></tr>
 * <tr><td>{@code tested on}, {@code test error}</td><td>date of the tests of this row, and the chance that one is wrong</td></tr>
 * <tr><td>{@code locus: C} and so on</td><td>genotype text of the locus named</td></tr>
 * <tr><td>{@code hearing tested on}, {@code left ear}, {@code right ear}</td><td>a date; {@code hears}, {@code deaf} or {@code not
 *     judged}</td></tr>
 * <tr><td>{@code x-} and whatever follows</td><td>for the author's own use; passed over</td></tr>
 * </table>
 *
 * <p><b>Several rows.</b> An individual that was seen, tested or heard several times, or whose sire is one of several, has several rows with
 * its id. Each adds what it holds; the columns up to {@code probands}, the sire excepted, are empty in later rows or say the same. What
 * is said of a litter is said in the row of one kit or more, and must then agree.
 *
 * <p><b>Counted kits.</b> A row without an id that names a litter and a count stands for so many kits, each with all that the row says; a
 * count of 0 adds no kit. Such kits get ids that begin with that of their litter: {@code spring/1}, {@code spring/2} and so on, passing over
 * ids that stand in the table. A row tells of one occasion; who was looked at twice needs an id. A row with neither id nor count is about
 * the litter alone.
 *
 * <p><b>Litters without an id.</b> If a row names a parent but no litter, then rows that name the same dam, the same sire and the same date of
 * birth are of one litter; a row that lacks one of the three is of a litter of its own. Such a litter gets the id of its first kit.
 *
 * <p><b>Several readings.</b> Where one of several looks was seen, the cell of each trait lists its state in each look, with {@code " | "}
 * between them, or one state that is in all: {@code black | brown} and {@code pink} are two looks with pink eyes. A test that leaves several
 * results open lists them likewise.
 *
 * <p><b>Cells.</b> Dates are ISO 8601 ({@code 2026-05-01}). Chances are decimals ({@code 0.25}) or, where decimals would not be exact, {@code
 * 1 in 3}; fractions and percentages are read too. Blanks at both ends of a cell mean nothing.
 *
 * <p><b>Spreadsheets.</b> A text that a spreadsheet would run as a formula or turn into something else, such as {@code =1+1}, {@code 007} or
 * {@code 1/4}, is written with an apostrophe before it, and read with or without.
 *
 * <p><b>What a table leaves out:</b> title and catalogue, which the caller states, and the trail of corrections, which only the JSON document
 * keeps.
 *
 * <p><b>Algorithm.</b> The text is taken apart into rows and cells; the header says what each column is; each row is added to what is
 * known of its individual and its litter; the records are then put into the ordinary builder, so that what a table may say is checked
 * exactly as what a program says. Problems point to {@code /row/column}, the rows below the header counted from 0, and have the line and
 * the column of the cell in the text.
 *
 * <p>This is the only package that needs Apache Commons CSV.
 */
@NullMarked
package org.geneticsrules.table;

import org.jspecify.annotations.NullMarked;
