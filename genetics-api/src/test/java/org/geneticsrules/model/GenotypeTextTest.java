package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GenotypeTextTest {

    /** Loci C (three alleles, wild type C), B, and S and T, which share the symbols x and y. */
    private static final Model MODEL = Model.builder(
                    "test.text", "1", Catalogue.builder("test.none", "1").build())
            .locus(
                    "C",
                    locus -> locus.allele(Allele.of("C"))
                            .allele(new Allele("ch", "c^h", Optional.empty(), List.of("Ch")))
                            .allele(Allele.of("c"))
                            .wildType("C")
                            .dominant("C", "ch")
                            .dominant("ch", "c")
                            .shows("C", "full")
                            .shows("ch", "points")
                            .shows("c", "none"))
            .locus(
                    "B",
                    locus -> locus.alleles("B", "b")
                            .dominant("B", "b")
                            .shows("B", "dark")
                            .shows("b", "brown"))
            .locus(
                    "spread",
                    locus -> locus.symbol("S")
                            .alleles("x", "y", "s")
                            .dominant("x", "y")
                            .dominant("y", "s")
                            .shows("x", "much")
                            .shows("y", "some")
                            .shows("s", "none"))
            .locus(
                    "T",
                    locus -> locus.alleles("x", "y")
                            .wildType("x")
                            .dominant("x", "y")
                            .shows("x", "1")
                            .shows("y", "2"))
            .build();

    private static final GenotypeText TEXT = GenotypeText.of(MODEL);

    private static String canonical(String text) {
        return TEXT.print(TEXT.parse(text, OmittedLoci.UNKNOWN).genotypes()).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        // alleles in declared order, loci in model order, one space between loci
        "C/c, C/c",
        "c/C, C/c",
        "c/c^h, c^h/c",
        "b/B c/C, C/c B/b",
        "C/c;B/b, C/c B/b",
        "'  C/c ;  B/b ', C/c B/b",
        // ids and synonyms are read, symbols printed
        "ch/c, c^h/c",
        "C/Ch, C/c^h",
        // the locus before a colon, by id or symbol, printed only where needed
        "C:c/C, C/c",
        "S:x/y, S:x/y",
        "spread:y/x, S:x/y",
        "T:x/x, T:x/x",
        "s/x, x/s",
        "x/s T:y/x, x/s T:x/y",
        // unknown alleles come last
        "-/C, C/-",
        "C/_, C/-",
        "S:x/-, S:x/-",
        "s/-, s/-",
        "c^h/- B/b, c^h/- B/b",
        // nothing is known
        "C:-/-, ''",
        "C:?, ''",
        "C:?/? B/b, B/b",
        "'', ''",
        "' ; ', ''",
        // wild type
        "C:+/+, C/C",
        "+/c, C/c",
        "c/+, C/c",
        "T:+/y, T:x/y",
        // brackets
        "[C B]/[c b], C/c B/b",
        "[c B]|[C b], C/c B/b",
        "[C]/[c], C/c",
        "[C -]/[c b], C/c b/-",
        "[ C  B ]/[ c  b ] x/s, C/c B/b x/s",
        "c|C, C/c",
        // alleles written together
        "Cc, C/c",
        "cC, C/c",
        "CcBb, C/c B/b",
        "bBcC, C/c B/b",
        "cc^hBB, c^h/c B/B",
        "c^hc^h, c^h/c^h",
        "C-, C/-",
        "C_B-, C/- B/-",
        "T:xy, T:x/y",
        "S:xy, S:x/y"
    })
    void what_is_read_and_how_it_is_printed(String text, String printed) {
        assertEquals(printed, canonical(text));
        assertEquals(printed, canonical(canonical(text)));
    }

    private static List<Problem> refused(String text) {
        return assertThrows(ProblemsException.class, () -> TEXT.parse(text, OmittedLoci.UNKNOWN))
                .problems();
    }

    private static void refused(String text, String... expected) {
        assertEquals(
                List.of(expected), refused(text).stream().map(Problem::toString).toList());
    }

    private static final String SPELLINGS = "expected one of C, c^h, ch, Ch, c, B, b, x, y, s";

    @Test
    void an_unknown_allele_names_the_nearest() {
        refused("c^x/c", "1:1 unknown allele \"c^x\"; " + SPELLINGS + "; did you mean \"c^h\"? [unknown-allele]");
        refused("C/c B/bb", "1:5 unknown allele \"bb\"; " + SPELLINGS + "; did you mean \"b\"? [unknown-allele]");
        refused("Kit/Kit", "1:1 unknown allele \"Kit\"; " + SPELLINGS + " [unknown-allele]");
    }

    @Test
    void an_unknown_allele_of_a_named_locus_lists_only_those_of_the_locus() {
        refused(
                "B/b C:C/k",
                "1:5 unknown allele of locus C \"k\"; expected one of C, c^h, ch, Ch, c; did you mean \"C\"?"
                        + " [unknown-allele]");
        refused(
                "S:B/x",
                "1:1 unknown allele of locus S \"B\"; expected one of x, y, s; did you mean \"x\"? [unknown-allele]");
    }

    @Test
    void an_unknown_locus_names_the_nearest() {
        refused(
                "B/b spraed:x/y",
                "1:5 unknown locus \"spraed\"; expected one of C, B, spread, S, T; did you mean \"spread\"?"
                        + " [unknown-locus]");
    }

    @Test
    void alleles_of_two_loci_in_one_pair() {
        refused(
                "C/b",
                "1:1 no single locus has both C and b; expected two alleles of one locus, for example C/C [mixed-loci]");
    }

    @Test
    void a_symbol_of_two_loci_needs_the_locus() {
        refused(
                "C/c x/y",
                "1:5 \"x/y\" can be of locus spread or T; expected the locus and a colon before it, for example S:x/y"
                        + " [ambiguous-locus]");
        refused(
                "x/-",
                "1:1 \"x/-\" can be of locus spread or T; expected the locus and a colon before it, for example S:x/-"
                        + " [ambiguous-locus]");
    }

    @Test
    void a_pair_without_any_symbol_needs_the_locus() {
        for (String pair : List.of("-/-", "+/+", "?/?", "+/-")) {
            refused(
                    pair,
                    "1:1 \"" + pair + "\" does not say which locus is meant; expected the locus and a colon before it,"
                            + " for example C:" + pair + " [no-locus]");
        }
    }

    @Test
    void a_plus_where_no_wild_type_is_declared() {
        refused(
                "B/+",
                "1:1 locus B declares no wild type, so + means nothing there; expected one of its alleles [B, b]"
                        + " [no-wild-type]");
    }

    @Test
    void a_locus_named_twice() {
        refused("C/c B/b c/c", "1:9 locus C is named twice [locus-twice]");
        refused("[C B]/[c B] B/b", "1:13 locus B is named twice [locus-twice]");
    }

    @Test
    void a_hemizygous_partner_where_nothing_is_sex_linked() {
        refused(
                "C/Y",
                "1:1 \"Y\" stands for the missing partner of a sex-linked allele, but model test.text 1 has no"
                        + " sex-linked locus; expected two alleles [not-sex-linked]");
        assertEquals("not-sex-linked", refused("B:B/W").get(0).code());
    }

    @Test
    void what_is_no_allele() {
        refused("C/c/c", "1:1 \"c/c\" is not an allele; expected a symbol, +, - or ? [bad-allele]");
        refused("C/", "1:1 \"\" is not an allele; expected a symbol, +, - or ? [bad-allele]");
        refused("/c", "1:1 \"\" is not an allele; expected a symbol, +, - or ? [bad-allele]");
        refused("C/c,", "1:1 \"c,\" is not an allele; expected a symbol, +, - or ? [bad-allele]");
        refused("[]/[]", "1:2 \"\" is not an allele; expected a symbol, +, - or ? [bad-allele]");
        assertEquals("bad-allele", refused("C/c\tB/b").get(0).code());
    }

    @ParameterizedTest
    @ValueSource(strings = {"[C B", "[C B]", "[C B]/c", "[C B][c b]", "[C B]/[c b", "[C B]/", "[C B]-[c b]"})
    void brackets_that_are_no_two_strands(String text) {
        assertEquals(
                "1:1 \"" + text + "\" is not a pair of strands; expected [C B]/[c b] [bad-phase]",
                refused(text).get(0).toString());
    }

    @Test
    void strands_of_unequal_length() {
        refused(
                "B/b [C B]/[c]",
                "1:5 the strands of \"[C B]/[c]\" name 2 and 1 alleles; expected the same loci on both strands"
                        + " [bad-phase]");
    }

    @Test
    void what_is_written_together_and_has_no_reading() {
        assertEquals("unknown-allele", refused("Cb").get(0).code());
        assertEquals("unknown-allele", refused("C").get(0).code());
        assertEquals("unknown-allele", refused("K9").get(0).code());
        assertEquals("unknown-allele", refused("Ccc^h").get(0).code());
        assertTrue(refused("CcB").get(0).toString().contains("expected two alleles of one locus, for example C/C"));
    }

    @Test
    void what_is_written_together_and_has_two_readings_lists_them() {
        Model model = Model.builder(
                        "test.together",
                        "1",
                        Catalogue.builder("test.none", "1").build())
                .locus(
                        "A",
                        locus -> locus.alleles("a", "aa")
                                .dominant("a", "aa")
                                .shows("a", "1")
                                .shows("aa", "2"))
                .build();
        ProblemsException refused = assertThrows(
                ProblemsException.class, () -> GenotypeText.of(model).parse("aaa", OmittedLoci.UNKNOWN));
        assertEquals(
                "1:1 \"aaa\" can be read as aa/a or as a/aa; expected a slash between the alleles [ambiguous-genotype]",
                refused.getMessage());
        assertEquals("a/a", Genotype.parse(model, "aa").toString());
    }

    @Test
    void every_part_that_fails_is_reported_with_its_column() {
        List<Problem> problems = refused("C/k B/b q:x/y x/y C/b B/b");
        assertEquals(
                List.of(
                        "1:1 unknown-allele",
                        "1:9 unknown-locus",
                        "1:15 ambiguous-locus",
                        "1:19 mixed-loci",
                        "1:23 locus-twice"),
                problems.stream()
                        .map(problem -> problem.position().orElseThrow() + " " + problem.code())
                        .toList());
    }

    @Test
    void a_genotype_is_fully_known_or_says_where_it_is_not() {
        ProblemsException refused = assertThrows(ProblemsException.class, () -> Genotype.parse(MODEL, "B/b C/- S:?"));
        assertEquals(
                List.of(
                        "1:5 locus C is only partly known in \"B/b C/- S:?\"; expected two known alleles, for example C/C"
                                + " [partly-known]",
                        "1:9 locus spread is only partly known in \"B/b C/- S:?\"; expected two known alleles, for"
                                + " example S:x/x [partly-known]"),
                refused.problems().stream().map(Problem::toString).toList());
        assertEquals("C/c B/b", Genotype.parse(MODEL, "B/b C/c").toString());
    }

    @Test
    void an_allele_not_known_is_the_set_of_all_its_pairs() {
        GenotypeText.Parsed parsed = TEXT.parse("c/-", OmittedLoci.UNKNOWN);
        assertEquals(
                List.of("C/c", "c^h/c", "c/c"),
                parsed.genotypes().pairs("C").stream().map(AllelePair::toString).toList());
        assertEquals(BigInteger.valueOf(3 * 3 * 6 * 3), parsed.genotypes().size());
        assertEquals(Set.of("C"), parsed.named());
    }

    @Test
    void loci_not_named_are_unknown_or_wild_type_as_said() {
        GenotypeText.Parsed unknown = TEXT.parse("B/b", OmittedLoci.UNKNOWN);
        assertEquals("B/b", TEXT.print(unknown.genotypes()).orElseThrow());
        GenotypeText.Parsed wild = TEXT.parse("B/b", OmittedLoci.WILD_TYPE);
        // Locus S declares no wild type and stays unknown.
        assertEquals("C/C B/b T:x/x", TEXT.print(wild.genotypes()).orElseThrow());
        assertEquals(OmittedLoci.WILD_TYPE, wild.omitted());
        assertEquals(Set.of("B"), wild.named());
        GenotypeText.Parsed asked = TEXT.parse("C:? B/b", OmittedLoci.WILD_TYPE);
        assertEquals("B/b T:x/x", TEXT.print(asked.genotypes()).orElseThrow());
    }

    @Test
    void phase_is_read_and_said_to_mean_nothing_here() {
        assertEquals(List.of(), TEXT.parse("C/c B/b", OmittedLoci.UNKNOWN).notices());
        assertEquals(
                List.of("phase was read but not kept: loci C, B are not linked in model test.text 1"),
                TEXT.parse("[C B]/[c b]", OmittedLoci.UNKNOWN).notices());
        assertEquals(List.of(), TEXT.parse("[C]/[c]", OmittedLoci.UNKNOWN).notices());
    }

    @Test
    void a_mistake_on_the_second_strand_is_shown_there() {
        refused(
                "B/b [C x]/[c Q:y]",
                "1:14 unknown locus \"Q\"; expected one of C, B, spread, S, T; did you mean \"C\"? [unknown-locus]");
    }

    @Test
    void nothing_before_the_colon_is_no_locus() {
        assertEquals("unknown-locus", refused(":B/b").get(0).code());
    }

    @Test
    void a_question_mark_alone_does_not_say_which_locus_is_unknown() {
        refused(
                "?",
                "1:1 \"?/?\" does not say which locus is meant; expected the locus and a colon before it, for example"
                        + " C:?/? [no-locus]");
    }

    /** The example is of a locus at which animals have two alleles, where there is one. */
    @Test
    void the_example_shows_two_alleles_of_one_locus() {
        Catalogue none = Catalogue.builder("test.none", "1").build();
        ModelBuilder builder = Model.builder("test.example", "1", none)
                .locus("M", locus -> locus.alleles("M").shows("M", "m"))
                .group(LinkageGroup.single(Transmission.MATERNAL, "M"));
        assertTrue(example(builder).contains("two alleles of one locus, for example M "), example(builder));
        builder.locus("O", locus -> locus.alleles("O").shows("O", "o")).group(LinkageGroup.single(Transmission.X, "O"));
        assertTrue(example(builder).contains("two alleles of one locus, for example O/O "), example(builder));
    }

    private static String example(ModelBuilder builder) {
        return assertThrows(ProblemsException.class, () -> Genotype.parse(builder.build(), "K9"))
                .problems()
                .get(0)
                .toString();
    }
}
