package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Consumer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DominanceTableTest {

    private static ModelBuilder builder(Consumer<LocusBuilder> describe) {
        return Model.builder(
                        "test.one-locus",
                        "1",
                        Catalogue.builder("test.none", "1").build())
                .locus("C", describe);
    }

    private static Locus locus(Consumer<LocusBuilder> describe) {
        return builder(describe).build().locus("C");
    }

    private static String expression(Locus locus, String one, String other) {
        return locus.expression(locus.pair(one, other), Sex.FEMALE);
    }

    private static List<String> citedFor(Locus locus, String one, String other) {
        return locus.decidedBy(locus.pair(one, other), Sex.FEMALE).stream()
                .map(pointer -> pointer.replace("/loci/C/dominance/", ""))
                .toList();
    }

    private static void refused(String text, Consumer<LocusBuilder> describe) {
        List<Problem> problems = Refusals.of(builder(describe));
        assertEquals(1, problems.size(), problems.toString());
        assertEquals(Stage.MEANING, problems.get(0).stage());
        assertEquals(text, problems.get(0).toString());
    }

    @Test
    void by_order_the_dominant_allele_shows() {
        Locus locus = locus(
                c -> c.alleles("C", "c").dominant("C", "c").shows("C", "full").shows("c", "albino"));
        assertEquals("full", expression(locus, "C", "C"));
        assertEquals("full", expression(locus, "c", "C"));
        assertEquals("albino", expression(locus, "c", "c"));
        assertEquals(List.of("shows/C", "order/0"), citedFor(locus, "C", "c"));
        assertEquals(List.of("shows/c"), citedFor(locus, "c", "c"));
    }

    @Test
    void by_table_the_pair_shows_what_is_stated_in_either_order() {
        Locus locus = locus(
                c -> c.alleles("M", "m").shows("M", "none").shows("m/M", "some").shows("m", "much"));
        assertEquals("some", expression(locus, "M", "m"));
        assertEquals(List.of("shows/m~1M"), citedFor(locus, "M", "m"));
        assertEquals(List.of("none", "some", "much"), locus.expressions());
    }

    /** Source: Castle (from memory): the rabbit series, light chinchilla incompletely dominant over the two below it. */
    @Test
    void order_and_table_together_make_a_partial_order() {
        Locus locus = locus(c -> c.alleles("C", "cch", "cl", "ch", "c")
                .dominant("C", "cch")
                .dominant("cch", "cl")
                .dominant("cch", "ch")
                .dominant("ch", "c")
                .shows("C", "full")
                .shows("cch", "chinchilla")
                .shows("cl", "light chinchilla")
                .shows("ch", "Himalayan")
                .shows("c", "albino")
                .shows("cl/ch", "light with points")
                .shows("cl/c", "light with points"));
        assertEquals(15, locus.pairs().size());
        assertEquals("full", expression(locus, "C", "c"));
        assertEquals("chinchilla", expression(locus, "cch", "c"));
        assertEquals("light with points", expression(locus, "c", "cl"));
        assertEquals("Himalayan", expression(locus, "c", "ch"));
        assertEquals(List.of("shows/C", "order/0", "order/2", "order/3"), citedFor(locus, "C", "c"));
        assertEquals(List.of("shows/cl~1c"), citedFor(locus, "cl", "c"));
    }

    @Test
    void of_two_chains_the_shorter_is_cited() {
        Locus locus = locus(c -> c.alleles("C", "s", "c")
                .dominant("C", "s")
                .dominant("s", "c")
                .dominant("C", "c")
                .shows("C", "full")
                .shows("s", "pale")
                .shows("c", "albino"));
        assertEquals(List.of("shows/C", "order/2"), citedFor(locus, "C", "c"));
        assertEquals(List.of("shows/C", "order/0"), citedFor(locus, "C", "s"));
        assertEquals(List.of("shows/s", "order/1"), citedFor(locus, "s", "c"));
    }

    @Test
    void a_chain_of_two_is_cited_whole_where_nothing_shorter_is_stated() {
        Locus locus = locus(c -> c.alleles("c", "s", "C")
                .dominant("s", "c")
                .dominant("C", "s")
                .shows("C", "full")
                .shows("s", "pale")
                .shows("c", "albino"));
        assertEquals(List.of("shows/C", "order/1", "order/0"), citedFor(locus, "C", "c"));
        assertEquals("c/C", locus.pair("C", "c").toString());
    }

    /** Published in every textbook: k alleles give k(k+1)/2 genotypes. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 9})
    void k_alleles_give_half_k_times_k_plus_1_genotypes(int k) {
        Locus locus = locus(c -> {
            for (int i = 1; i <= k; i++) {
                c.alleles("a" + i).shows("a" + i, "look " + i);
                if (i > 1) {
                    c.dominant("a" + (i - 1), "a" + i);
                }
            }
        });
        assertEquals(k * (k + 1) / 2, locus.pairs().size());
        for (AllelePair pair : locus.pairs()) {
            assertEquals(
                    pair,
                    locus.pair(pair.alleles().get(1).id(), pair.alleles().get(0).id()));
            assertEquals("look " + pair.alleles().get(0).id().substring(1), locus.expression(pair, Sex.FEMALE));
            assertEquals(
                    locus.expressions().indexOf(locus.expression(pair, Sex.FEMALE)),
                    locus.expressionPosition(pair, Sex.FEMALE));
            int[] positions = locus.positions(pair);
            assertEquals(pair, locus.pair(positions[1], positions[0]));
        }
    }

    @Test
    void an_expression_that_no_genotype_reaches_is_kept() {
        Locus locus = locus(c -> c.alleles("m", "M")
                .expressions("none", "some", "much")
                .dominant("M", "m")
                .shows("M", "none")
                .shows("m", "much"));
        assertEquals(List.of("none", "some", "much"), locus.expressions());
    }

    @Test
    void a_pair_of_another_locus_is_refused() {
        Locus locus = locus(c -> c.alleles("C").shows("C", "full"));
        Locus other = Model.builder("m", "1", Catalogue.builder("t", "1").build())
                .locus("D", d -> d.alleles("C").shows("C", "full"))
                .build()
                .locus("D");
        AllelePair foreign = other.pair("C", "C");
        assertThrows(IllegalArgumentException.class, () -> locus.expression(foreign, Sex.FEMALE));
        assertThrows(IllegalArgumentException.class, () -> locus.decidedBy(foreign, Sex.FEMALE));
        assertThrows(IllegalArgumentException.class, () -> locus.positions(foreign));
        IllegalArgumentException unknown = assertThrows(IllegalArgumentException.class, () -> locus.pair("C", "k"));
        assertTrue(unknown.getMessage().contains("no allele \"k\""), unknown.getMessage());
    }

    @Test
    void a_pair_that_nothing_decides_is_shown_with_both_remedies() {
        refused(
                "/loci/C/dominance: nothing decides what the pair C/s of locus C shows; expected an order such as"
                        + " \"C > s\" or an entry \"C/s\" [pair-undecided]",
                c -> c.alleles("C", "s", "c")
                        .dominant("C", "c")
                        .dominant("s", "c")
                        .shows("C", "full")
                        .shows("s", "pale")
                        .shows("c", "albino"));
    }

    @Test
    void a_homozygote_that_nothing_decides_is_shown() {
        refused(
                "/loci/C/dominance/shows: what c/c shows is not stated; expected an entry \"c\" [pair-undecided]",
                c -> c.alleles("C", "c").dominant("C", "c").shows("C", "full"));
    }

    @Test
    void a_pair_decided_by_order_and_table_is_shown_with_the_chain() {
        refused(
                "/loci/C/dominance/shows/C~1c: the pair C/c of locus C is decided both by this entry and by the order"
                        + " C > s, s > c; expected exactly one of the two [pair-decided-twice]",
                c -> c.alleles("C", "s", "c")
                        .dominant("C", "s")
                        .dominant("s", "c")
                        .shows("C", "full")
                        .shows("s", "pale")
                        .shows("c", "albino")
                        .shows("C/c", "pale"));
    }

    @Test
    void a_pair_or_an_allele_stated_twice_is_shown() {
        refused(
                "/loci/C/dominance/shows/c~1C: what c/C shows is stated twice; expected one statement; a homozygote is"
                        + " written as its allele alone [pair-decided-twice]",
                c -> c.alleles("C", "c")
                        .shows("C", "x")
                        .shows("c", "y")
                        .shows("C/c", "x")
                        .shows("c/C", "y"));
        refused(
                "/loci/C/dominance/shows/C: what C shows is stated twice; expected one statement; a homozygote is"
                        + " written as its allele alone [pair-decided-twice]",
                c -> c.alleles("C").shows("C", "x").shows("C", "x"));
        refused(
                "/loci/C/dominance/shows/C~1C: what C/C shows is stated as a pair, but both alleles are the same;"
                        + " expected one statement; a homozygote is written as its allele alone [pair-decided-twice]",
                c -> c.alleles("C").shows("C", "x").shows("C/C", "x"));
    }

    @Test
    void an_order_in_a_circle_is_shown_step_by_step() {
        refused(
                "/loci/C/dominance/order: the order of dominance at locus C runs in a circle: C > s, s > c, c > C"
                        + " [dominance-circle]",
                c -> c.alleles("C", "s", "c")
                        .dominant("C", "s")
                        .dominant("s", "c")
                        .dominant("c", "C")
                        .shows("C", "full")
                        .shows("s", "pale")
                        .shows("c", "albino"));
        refused(
                "/loci/C/dominance/order: the order of dominance at locus C runs in a circle: C > C [dominance-circle]",
                c -> c.alleles("C").dominant("C", "C").shows("C", "full"));
    }
}
