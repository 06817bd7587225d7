package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigInteger;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Genotype text of linked loci and of loci on sex chromosomes. */
class LinkedTextTest {

    private static final Probability TENTH = Probability.of(1, 10);

    /**
     * Autosomal loci B, E, D linked in the order B-D-E, S and T linked and sharing the symbols x and y, and F alone; O and P linked on
     * the X; H on the Y; M outside the nucleus.
     */
    private static final Model MODEL = loci("B", "E", "D", "F", "O", "P", "H", "M")
            .locus("S", locus -> describe(locus, "x", "y"))
            .locus("T", locus -> describe(locus, "x", "y"))
            .group(LinkageGroup.autosomal("first", List.of("B", "D", "E"), List.of(TENTH, TENTH)))
            .group(LinkageGroup.autosomal("second", List.of("S", "T"), List.of(TENTH)))
            .group(LinkageGroup.of(
                    "third", Transmission.X, List.of("P", "O"), Recombination.Fractions.of(List.of(TENTH))))
            .group(LinkageGroup.single(Transmission.Y, "H"))
            .group(LinkageGroup.single(Transmission.MATERNAL, "M"))
            .build();

    /** Locus B on the Z, V on the W, A autosomal. */
    private static final Model BIRDS = loci("B", "V", "A")
            .group(LinkageGroup.single(Transmission.Z, "B"))
            .group(LinkageGroup.single(Transmission.W, "V"))
            .build();

    private static final GenotypeText TEXT = GenotypeText.of(MODEL);

    private static ModelBuilder loci(String... ids) {
        ModelBuilder builder = Model.builder(
                "test.linked", "1", Catalogue.builder("test.none", "1").build());
        for (String id : ids) {
            builder.locus(id, locus -> {
                describe(locus, id, id.toLowerCase(Locale.ROOT));
                if (id.equals("H") || id.equals("V")) {
                    locus.absent("low");
                }
            });
        }
        return builder;
    }

    private static void describe(LocusBuilder locus, String high, String low) {
        locus.alleles(high, low)
                .wildType(high)
                .dominant(high, low)
                .shows(high, "high")
                .shows(low, "low");
    }

    @ParameterizedTest
    @CsvSource({
        // loci in brackets are printed in map order, strands by the first heterozygous locus
        "[B D]/[b d], [B D]/[b d]",
        "[d B]/[D b], [B d]/[b D]",
        "[b e]/[B E], [B E]/[b e]",
        "[e d b]|[E D B], [B D E]/[b d e]",
        // only loci of which the phase is known stay in brackets
        "[B D E]/[b D e], [B E]/[b e] D/D",
        "[B D]/[b D], B/b D/D",
        "[B]/[b], B/b",
        "[B E]/[b e] D/d, [B E]/[b e] D/d",
        "B/b D/d, B/b D/d",
        // brackets stand where their first locus does
        "F/f [E D]/[e d] B/B, B/B [D E]/[d e] F/f",
        "[B E]/[b e] [S:x T:y]/[S:y T:x], [B E]/[b e] [S:x T:y]/[S:y T:x]",
        // either strand may name the locus, and the wild type has a sign
        "[S:x T:y]/[y x], [S:x T:y]/[S:y T:x]",
        "[x T:+]/[S:y y], [S:x T:x]/[S:y T:y]",
        "[+ D]/[b d], [B D]/[b d]",
        // one strand
        "O/Y, O/Y",
        "Y/o, o/Y",
        "[O p]/Y, O/Y p/Y",
        "[P O]|Y h, O/Y P/Y h",
        "H, H",
        "[H], H",
        "H:+ O:+/Y, O/Y H",
        "m B/b, B/b m",
        "M:m, m",
        // two strands of an X
        "[O p]/[o P], [P o]/[p O]"
    })
    void what_is_read_and_how_it_is_printed(String text, String printed) {
        assertEquals(
                printed.replace("[O p]/[o P]", "[P o]/[p O]"),
                Genotype.parse(MODEL, text).toString());
        assertEquals(
                Genotype.parse(MODEL, text),
                Genotype.parse(MODEL, Genotype.parse(MODEL, text).toString()));
    }

    @Test
    void coupling_and_repulsion_are_different_genotypes_of_the_same_alleles() {
        Genotype coupling = Genotype.parse(MODEL, "[B D]/[b d]");
        Genotype repulsion = Genotype.parse(MODEL, "[B d]/[b D]");
        assertEquals(coupling.pairs(), repulsion.pairs());
        assertNotEquals(coupling, repulsion);
        assertEquals(coupling, Genotype.parse(MODEL, "[b d]/[B D]"));
        assertEquals(
                coupling.phase(), TEXT.parse("[B D]/[b d]", OmittedLoci.UNKNOWN).phase());
        assertEquals(Phase.unknown(), TEXT.parse("B/b D/d", OmittedLoci.UNKNOWN).phase());
    }

    @Test
    void a_single_strand_tells_the_sex() {
        assertEquals(Set.of(Sex.MALE), Genotype.parse(MODEL, "O/Y").sexes());
        assertEquals(Set.of(Sex.MALE), Genotype.parse(MODEL, "H").sexes());
        assertEquals(Set.of(Sex.FEMALE), Genotype.parse(MODEL, "O/o").sexes());
        assertEquals(
                Set.of(Sex.FEMALE, Sex.MALE), Genotype.parse(MODEL, "B/b M").sexes());
        assertEquals(Set.of(Sex.FEMALE), Genotype.parse(BIRDS, "B/W").sexes());
        assertEquals(Set.of(Sex.FEMALE), Genotype.parse(BIRDS, "V").sexes());
        assertEquals(Set.of(Sex.MALE), Genotype.parse(BIRDS, "B/b").sexes());
    }

    @Test
    void the_sex_tells_which_loci_are_lacking() {
        Genotype female = Genotype.parse(MODEL, "O/o");
        assertEquals(Optional.of(MODEL.locus("H").of()), female.pair("H"));
        assertEquals("O/o", female.toString());
        assertEquals(Optional.empty(), Genotype.parse(MODEL, "O/Y").pair("H"));
        assertEquals(
                Optional.of(BIRDS.locus("V").of()), Genotype.parse(BIRDS, "B/B").pair("V"));
    }

    private static GenotypeSet set(String text) {
        return TEXT.parse(text, OmittedLoci.UNKNOWN).genotypes();
    }

    @Test
    void an_allele_not_known_may_be_one_that_the_sex_lacks() {
        assertEquals(
                List.of("O/O", "O/o", "O/Y"),
                set("O/-").pairs("O").stream().map(AllelePair::toString).toList());
        assertEquals(set("O/Y"), set("O/-").of(Sex.MALE));
        assertEquals(Optional.of("O/-"), TEXT.print(set("O/-")));
        assertEquals(Optional.of("O:-/Y"), TEXT.print(GenotypeSet.all(MODEL).of(Sex.MALE)));
        assertEquals(
                Optional.of("B:-/W"),
                GenotypeText.of(BIRDS).print(GenotypeSet.all(BIRDS).of(Sex.FEMALE)));
        assertEquals(Optional.of("H"), TEXT.print(set("H")));
        assertEquals(Set.of(Sex.MALE), set("H:-").sexes());
        assertEquals(Optional.of("O:-/Y"), TEXT.print(set("H:-")));
        assertEquals(GenotypeSet.all(MODEL), set("H:?"));
        // There is no text for a female of which nothing else is known.
        assertEquals(Optional.empty(), TEXT.print(GenotypeSet.all(MODEL).of(Sex.FEMALE)));
        assertEquals(
                "sex: female", GenotypeSet.all(MODEL).of(Sex.FEMALE).toString().substring(0, 11));
    }

    @Test
    void wild_type_is_that_of_either_sex() {
        GenotypeSet wild = TEXT.parse("B/b", OmittedLoci.WILD_TYPE).genotypes();
        assertEquals(BigInteger.TWO, wild.size());
        assertEquals(set("B/b D/D E/E F/F O/O P/P M S:x/x T:x/x"), wild.of(Sex.FEMALE));
        assertEquals(set("B/b D/D E/E F/F O/Y P/Y H M S:x/x T:x/x"), wild.of(Sex.MALE));
    }

    private static void refused(Model model, String text, String... expected) {
        List<Problem> problems = assertThrows(
                        ProblemsException.class, () -> GenotypeText.of(model).parse(text, OmittedLoci.UNKNOWN))
                .problems();
        assertEquals(List.of(expected), problems.stream().map(Problem::toString).toList());
    }

    @Test
    void a_partner_chromosome_where_the_locus_has_none() {
        refused(
                MODEL,
                "F/f B/Y",
                "1:5 \"Y\" stands for the missing partner of a sex-linked allele, but locus B is autosomal; expected"
                        + " two alleles [not-sex-linked]");
        refused(
                MODEL,
                "[B D]/Y",
                "1:2 \"Y\" stands for the missing partner of a sex-linked allele, but locus B is autosomal; expected"
                        + " two alleles [not-sex-linked]",
                "1:4 \"Y\" stands for the missing partner of a sex-linked allele, but locus D is autosomal; expected"
                        + " two alleles [not-sex-linked]");
        refused(
                MODEL,
                "O/W",
                "1:1 \"W\" stands for the missing partner of a sex-linked allele, but model test.linked 1 has no locus"
                        + " on the Z; expected two alleles [not-sex-linked]");
        refused(
                MODEL,
                "k/Y",
                "1:1 \"Y\" stands for the missing partner of a sex-linked allele, but no locus on the X has an allele"
                        + " \"k\"; expected two alleles [not-sex-linked]");
        refused(
                MODEL,
                "-/Y",
                "1:1 \"-/Y\" does not say which locus is meant; expected the locus and a colon before it, for example"
                        + " B:-/Y [no-locus]");
    }

    @Test
    void a_pair_where_animals_have_one_strand() {
        refused(
                MODEL,
                "H/h",
                "1:1 \"H/h\" names two alleles, but no animal has more than one at locus H, on the Y; expected one"
                        + " allele, for example H:H [one-strand]");
        refused(
                MODEL,
                "M/-",
                "1:1 \"M/-\" names two alleles, but no animal has more than one at locus M, handed down by the dam"
                        + " alone; expected one allele, for example M:M [one-strand]");
        refused(
                BIRDS,
                "Vv",
                "1:1 \"V/v\" names two alleles, but no animal has more than one at locus V, on the W; expected one"
                        + " allele, for example V:V [one-strand]");
    }

    @Test
    void one_allele_where_animals_have_two_strands() {
        refused(MODEL, "[B H]", "1:2 \"B\" names one allele of locus B, autosomal; expected two alleles [two-strands]");
        refused(
                MODEL,
                "[O]",
                "1:2 \"O\" names one allele of locus O, on the X; expected two alleles, or O:O/Y [two-strands]");
    }

    @Test
    void strands_with_different_loci() {
        refused(
                MODEL,
                "F/f [B D]/[d b]",
                "1:6 no single locus has both B and d, which stand in the same place of two strands; expected the same"
                        + " loci in the same order on both strands [strands-differ]",
                "1:8 no single locus has both D and b, which stand in the same place of two strands; expected the same"
                        + " loci in the same order on both strands [strands-differ]");
        refused(
                MODEL,
                "[S:x B]/[T:x b]",
                "1:2 locus S stands in the same place as locus T on the other strand; expected the same loci in the same"
                        + " order on both strands [strands-differ]");
        refused(
                MODEL,
                "[B D]/[b]",
                "1:1 the strands of \"[B D]/[b]\" name 2 and 1 alleles; expected the same loci on both strands"
                        + " [bad-phase]");
        refused(
                MODEL,
                "[q:x B]/[y b]",
                "1:2 unknown locus \"q\"; expected one of B, E, D, F, O, P, H, M, S, T; did you mean"
                        + " \"B\"? [unknown-locus]");
    }

    @Test
    void loci_of_two_groups_in_one_pair_of_brackets() {
        refused(
                MODEL,
                "[B O F]/[b o f]",
                "1:4 locus O is not in the linkage group first of locus B, so they have no phase; expected it outside of"
                        + " these brackets [not-linked]",
                "1:6 locus F is not in the linkage group first of locus B, so they have no phase; expected it outside of"
                        + " these brackets [not-linked]");
    }

    @Test
    void a_group_in_two_pairs_of_brackets() {
        refused(
                MODEL,
                "[B]/[b] [D E]/[d e]",
                "1:10 loci of the linkage group first stand in two pairs of brackets; expected one pair of brackets with"
                        + " all loci whose phase is known [phase-twice]");
    }

    @Test
    void loci_that_contradict_one_another_in_sex() {
        refused(
                MODEL,
                "O/o B/b H P/Y",
                "1:9 \"H\" at locus H is that of a male, but \"O/o\" at locus O is that of a female; expected a genotype"
                        + " that an animal of one sex can have [sexes-contradict]",
                "1:11 \"P/Y\" at locus P is that of a male, but \"O/o\" at locus O is that of a female; expected a"
                        + " genotype that an animal of one sex can have [sexes-contradict]");
        refused(
                BIRDS,
                "V B/B",
                "1:3 \"B/B\" at locus B is that of a male, but \"V\" at locus V is that of a female; expected a genotype"
                        + " that an animal of one sex can have [sexes-contradict]");
    }

    @Test
    void phase_that_cannot_be_kept_is_noticed() {
        GenotypeText.Parsed partly = TEXT.parse("[B D E]/[b - e]", OmittedLoci.UNKNOWN);
        assertEquals(
                List.of("the phase of locus D was read but not kept: one of its alleles is not known"),
                partly.notices());
        assertEquals(Set.of("B", "E"), partly.phase().strands().keySet());
        assertEquals(
                List.of(), TEXT.parse("[B D]/[b d] F/f", OmittedLoci.UNKNOWN).notices());
    }

    @Test
    void a_lone_symbol_that_could_be_two_alleles_is_printed_with_its_locus() {
        Model model = loci().locus("A", locus -> describe(locus, "a", "b"))
                .locus("N", locus -> describe(locus, "ab", "c"))
                .group(LinkageGroup.single(Transmission.MATERNAL, "N"))
                .build();
        assertEquals("a/b N:ab", Genotype.parse(model, "N:ab a/b").toString());
        assertEquals("a/b N:ab", Genotype.parse(model, "a/b N:ab").toString());
        assertEquals("a/b c", Genotype.parse(model, "c ba").toString());
        refused(
                model,
                "ab",
                "1:1 \"ab\" can be read as the one allele ab or as a/b; expected a slash between the alleles, or the"
                        + " locus and a colon [ambiguous-genotype]");
    }

    @Test
    void an_allele_may_be_spelled_as_a_partner_chromosome_elsewhere() {
        Model model = loci("O")
                .locus("A", locus -> describe(locus, "O", "Y"))
                .group(LinkageGroup.single(Transmission.X, "O"))
                .build();
        assertEquals("O:O/Y", model.locus("O").hemizygous("O").toString());
        assertEquals("A:O/Y", model.locus("A").pair("Y", "O").toString());
        refused(
                model,
                "O/Y",
                "1:1 \"O/Y\" can be of locus A or O; expected the locus and a colon before it, for example A:O/Y"
                        + " [ambiguous-locus]");
    }
}
