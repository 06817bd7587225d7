package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.junit.jupiter.api.Test;

/** Two models of one locus that call it, and its alleles, otherwise; the sentences are made up. */
class SameWordsTest {

    private static final Catalogue TRAITS =
            Catalogue.builder("coats", "1").trait("coat", "dark", "pale").build();

    private static Allele titled(String id, String title) {
        return new Allele(id, id, Optional.of(title), List.of());
    }

    private static Model model(String id, String locus, String strong, String weak) {
        return Model.builder(id, "1", TRAITS)
                .locus(
                        "D",
                        at -> at.title(locus)
                                .allele(titled("D", strong))
                                .allele(titled("d", weak))
                                .dominant("D", "d")
                                .shows("D", "full")
                                .shows("d", "pale"))
                .trait("coat", rule -> rule.otherwise("dark"))
                .build();
    }

    private static final Model ONE = model("one", "dilution", "full colour", "sandy");
    private static final Model OTHER = model("other", "lightness", "undiluted", "champagne");

    @Test
    void titles_of_one_locus_and_of_one_allele_are_the_same_words() {
        SameWords words = new SameWords(ONE, OTHER);
        assertTrue(words.are("It carries sandy at dilution.", "It carries champagne at lightness."));
        assertTrue(words.are("Half are full colour.", "Half are undiluted."));
        assertTrue(words.are("It carries sandy.", "It carries sandy."));
    }

    @Test
    void other_words_and_numbers_stay_different() {
        SameWords words = new SameWords(ONE, OTHER);
        assertFalse(words.are("It carries sandy.", "It may carry champagne."));
        assertFalse(words.are("1/2 carry sandy.", "1/3 carry champagne."));
        assertFalse(words.are("It carries sandy.", "It carries undiluted."), "another allele of the locus");
    }

    @Test
    void where_both_models_say_the_same_nothing_is_taken_for_the_same() {
        SameWords words = new SameWords(ONE, ONE);
        assertTrue(words.are("It carries sandy.", "It carries sandy."));
        assertFalse(words.are("It carries sandy.", "It carries champagne."));
    }

    @Test
    void a_title_within_a_longer_one_does_not_break_it() {
        Model wider = model("wider", "dilution", "full colour", "full colour but pale");
        SameWords words = new SameWords(wider, OTHER);
        assertTrue(words.are("It shows full colour but pale.", "It shows champagne."));
        assertTrue(words.are("It shows full colour.", "It shows undiluted."));
        assertFalse(words.are("It shows full colour but pale.", "It shows undiluted."));
    }

    @Test
    void alleles_that_only_one_model_has_are_left_alone() {
        Model more = Model.builder("more", "1", TRAITS)
                .locus(
                        "D",
                        at -> at.allele(titled("D", "undiluted"))
                                .allele(titled("x", "sandy"))
                                .dominant("D", "x")
                                .shows("D", "full")
                                .shows("x", "pale"))
                .trait("coat", rule -> rule.otherwise("dark"))
                .build();
        SameWords words = new SameWords(ONE, more);
        assertTrue(words.are("It is full colour.", "It is undiluted."));
        assertFalse(words.are("It is sandy.", "It is undiluted."));
    }
}
