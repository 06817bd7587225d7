package org.geneticsrules.model;

import static org.geneticsrules.model.Refusals.CATALOGUE;
import static org.geneticsrules.model.Refusals.shape;
import static org.geneticsrules.model.Refusals.valid;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NameChecksTest {

    private static final String WORDS =
            "; expected 1 to 80 letters, digits, spaces, hyphens, points or apostrophes," + " not beginning with x-";
    private static final String SYMBOL =
            "; expected a letter, then letters, digits, ' * or ., perhaps followed by ^ and a superscript";

    @Test
    void the_model_to_spoil_is_valid() {
        assertEquals(List.of("B", "C"), List.copyOf(valid().build().loci().keySet()));
    }

    @Test
    void no_locus() {
        List<Problem> problems = Refusals.of(Model.builder("m", "1", CATALOGUE));
        assertEquals(
                "/loci: the model has no locus, so nothing could be inherited; expected at least one locus [no-loci]",
                problems.get(0).toString());
    }

    @Test
    void a_blank_id_or_version() {
        String text =
                "the model has a blank id or version; expected an id such as example.pea and a version [blank-id]";
        assertEquals(
                text, Refusals.of(Model.builder(" ", "1", CATALOGUE)).get(0).toString());
        assertEquals(text, Refusals.of(Model.builder("m", "", CATALOGUE)).get(0).toString());
    }

    @Test
    void an_inner_trait_without_states() {
        shape(
                "/traits/depth: the inner trait has no states; expected at least one state [no-states]",
                model -> model.trait("depth", TraitBuilder::inner));
    }

    @Test
    void whatever_is_stated_twice() {
        List<Problem> problems = Refusals.of(model -> model.evidence(Evidence.of("e", Grade.PRACTICE, "Claim."))
                .evidence(Evidence.of("e", Grade.PRACTICE, "Claim."))
                .locus("B", locus -> locus.alleles("B").shows("B", "dark"))
                .trait("hue", rule -> rule.otherwise("black"))
                .mask(Mask.of("m", Condition.always()))
                .mask(Mask.of("m", Condition.always()))
                .population("p", p -> {})
                .population("p", p -> {}));
        assertEquals(
                List.of(
                        "evidence \"e\" is stated twice [duplicate-id]",
                        "locus \"B\" is stated twice [duplicate-id]",
                        "trait \"hue\" is stated twice [duplicate-id]",
                        "mask \"m\" is stated twice [duplicate-id]",
                        "population \"p\" is stated twice [duplicate-id]"),
                problems.stream().map(Problem::toString).toList());
    }

    @Test
    void a_locus_without_alleles_or_expressions() {
        assertEquals(
                List.of(
                        "/loci/D/alleles: locus D has no alleles; expected at least one allele [no-alleles]",
                        "/loci/D/expressions: locus D has no expressions; expected at least one [no-expressions]"),
                Refusals.of(model -> model.locus("D", locus -> {})).stream()
                        .map(Problem::toString)
                        .toList());
    }

    @Test
    void an_allele_declared_twice() {
        shape(
                "/loci/D/alleles: allele D of locus D is declared twice [duplicate-allele]",
                model -> model.locus("D", locus -> locus.alleles("D", "D").shows("D", "x")));
    }

    @Test
    void a_spelling_of_two_alleles() {
        shape(
                "/loci/D/alleles: \"d\" means both allele D and allele d of locus D [ambiguous-allele]",
                model -> model.locus(
                        "D",
                        locus -> locus.allele(new Allele("D", "D", Optional.empty(), List.of("d")))
                                .alleles("d")
                                .dominant("D", "d")
                                .shows("D", "x")
                                .shows("d", "y")));
    }

    @Test
    void a_symbol_of_two_loci() {
        shape(
                "/loci/D/symbol: \"B\" would name both locus B and locus D in genotype text; expected a symbol of its own"
                        + " for each locus [ambiguous-symbol]",
                model ->
                        model.locus("D", locus -> locus.symbol("B").alleles("D").shows("D", "x")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1c", "c c", "c/d", "c:", "-", "?", "+", "_", "c^", "^c", "c^a^b", "[c]", "c;"})
    void a_spelling_that_genotype_text_cannot_hold(String symbol) {
        shape(
                "/loci/D/alleles: \"" + symbol + "\" cannot be a symbol in genotype text" + SYMBOL + " [bad-symbol]",
                model -> model.locus(
                        "D",
                        locus -> locus.allele(new Allele("D", symbol, Optional.empty(), List.of()))
                                .shows("D", "x")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"c", "C", "cch", "c^ch", "b'", "B*", "s.1", "k^+", "k^-", "\u00e9"})
    void a_spelling_that_genotype_text_can_hold(String symbol) {
        Model model = valid().locus(
                        "D",
                        locus -> locus.allele(new Allele("D", "D", Optional.empty(), List.of(symbol)))
                                .shows("D", "x"))
                .build();
        assertEquals("D/D", Genotype.parse(model, "D:" + symbol + "/" + symbol).toString());
    }

    @Test
    void a_locus_of_two_words_needs_a_symbol_of_one() {
        shape(
                "/loci/second dilution/symbol: \"second dilution\" cannot be a symbol in genotype text" + SYMBOL
                        + " [bad-symbol]",
                model -> model.locus(
                        "second dilution", locus -> locus.alleles("D").shows("D", "x")));
        Model model = valid().locus(
                        "second dilution",
                        locus -> locus.symbol("Dil")
                                .alleles("B", "b")
                                .shows("B", "x")
                                .shows("B/b", "x")
                                .shows("b", "y"))
                .build();
        assertEquals("Dil:B/b", Genotype.parse(model, "Dil:b/B").toString());
    }

    @Test
    void names_that_are_no_plain_words() {
        shape(
                "/loci/D/expressions: \"pale: very\" cannot name a expression" + WORDS + " [bad-name]",
                model -> model.locus("D", locus -> locus.alleles("D").shows("D", "pale: very")));
        shape(
                "/traits/in,ner: \"in,ner\" cannot name a trait" + WORDS + " [bad-name]",
                model -> model.trait("in,ner", rule -> rule.inner("a").otherwise("a")));
        shape(
                "/traits/inner/states: \"a;b\" cannot name a state" + WORDS + " [bad-name]",
                model -> model.trait("inner", rule -> rule.inner("a;b").otherwise("a;b")));
        shape(
                "/traits/eye/cases/p~1q: \"p/q\" cannot name a case" + WORDS + " [bad-name]",
                model -> model.trait(
                        "eye", rule -> rule.when(new Case("p/q", Condition.always(), "dark", Optional.empty()))));
        shape(
                "/masks/ m: \" m\" cannot name a mask" + WORDS + " [bad-name]",
                model -> model.mask(Mask.of(" m", Condition.always())));
        shape(
                "/evidence/e~11: \"e/1\" cannot name a piece of evidence" + WORDS + " [bad-name]",
                model -> model.evidence(Evidence.of("e/1", Grade.PRACTICE, "Claim.")));
        shape(
                "/loci/D/expressions: \"x-pale\" cannot name a expression" + WORDS + " [bad-name]",
                model -> model.locus("D", locus -> locus.alleles("D").shows("D", "x-pale")));
        shape(
                "/populations/p!: \"p!\" cannot name a population" + WORDS + " [bad-name]",
                model -> model.population(
                        "p!", p -> p.frequency("B", "B", Probability.ONE).frequency("B", "b", Probability.ZERO)));
    }

    @Test
    void names_stated_twice_within_a_part() {
        shape(
                "/loci/D/expressions: the expression \"x\" is stated twice [duplicate-expression]",
                model -> model.locus(
                        "D", locus -> locus.alleles("D").expressions("x", "x").shows("D", "x")));
        shape(
                "/traits/inner/states: the state \"a\" is stated twice [duplicate-state]",
                model -> model.trait("inner", rule -> rule.inner("a", "a").otherwise("a")));
        shape(
                "/traits/eye/cases: the case \"pink\" is stated twice [duplicate-case]",
                model -> model.trait(
                        "eye",
                        rule -> rule.when(Condition.where("C", "albino"), "pink")
                                .when(Condition.where("C", "full"), "pink")));
    }

    @Test
    void a_name_of_a_locus_and_a_trait() {
        shape(
                "/traits/B: \"B\" names both a locus and a trait, so conditions could not tell them apart"
                        + " [ambiguous-name]",
                model -> model.trait("B", rule -> rule.inner("a").otherwise("a")));
    }

    @Test
    void a_case_called_otherwise() {
        shape(
                "/traits/eye/cases/otherwise: \"otherwise\" names the genotypes that no case covers; expected"
                        + " another name for the case [reserved-name]",
                model -> model.trait(
                        "eye",
                        rule -> rule.when(new Case("otherwise", Condition.always(), "dark", Optional.empty()))
                                .otherwise("dark")));
    }

    @Test
    void only_the_first_stage_that_finds_anything_is_reported() {
        List<Problem> problems = Refusals.of(model -> model.locus(
                        "D", locus -> locus.alleles("1").dominant("D", "x").shows("D", "y"))
                .trait("nose", rule -> rule.otherwise("pink")));
        assertEquals(List.of("bad-symbol"), problems.stream().map(Problem::code).toList());
    }
}
