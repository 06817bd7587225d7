package org.geneticsrules.explanation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.AnswerText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Where only a draw makes genotypes look alike, chance is the cause, and a draw is no locus. Models and animals are invented. */
class ChanceCauseTest {

    private static final Cause CHANCE = new Cause(Cause.Kind.CHANCE, List.of("spots"));

    /** A spotted animal has spots with 3/4; one that is not spotted has none. */
    private static Model spotted() {
        return Model.builder(
                        "invented.spots",
                        "1.0.0",
                        Catalogue.builder("invented.traits", "1.0.0")
                                .trait("spots", "none", "some")
                                .build())
                .locus(
                        "S",
                        locus -> locus.alleles("S", "s")
                                .dominant("S", "s")
                                .shows("S", "spotted")
                                .shows("s", "not"))
                .trait(
                        "spots",
                        spots -> spots.when(
                                        "may be",
                                        Condition.where("S", "spotted"),
                                        new CaseState.Chance(Distribution.of(chances(Probability.of(1, 4)))))
                                .otherwise("none"))
                .build();
    }

    private static Map<String, Probability> chances(Probability none) {
        Map<String, Probability> chances = new LinkedHashMap<>();
        chances.put("none", none);
        chances.put("some", none.complement());
        return chances;
    }

    /** One locus adds to a sum with a remainder that chance gives. */
    private static Model summed() {
        Map<Integer, Probability> rest = new LinkedHashMap<>();
        rest.put(0, Probability.of(1, 2));
        rest.put(2, Probability.of(1, 2));
        return Model.builder(
                        "invented.sum",
                        "1.0.0",
                        Catalogue.builder("invented.traits", "1.0.0")
                                .trait("spots", "none", "some")
                                .build())
                .locus(
                        "S",
                        locus -> locus.alleles("S", "s")
                                .dominant("S", "s")
                                .shows("S", "spotted")
                                .shows("s", "not"))
                .trait(
                        "spots",
                        spots -> spots.otherwise(
                                new CaseState.Threshold(
                                        Map.of("S", Map.of("spotted", 1)),
                                        Distribution.of(rest),
                                        "none",
                                        Map.of("some", 2)),
                                Optional.empty()))
                .build();
    }

    @Test
    void a_coat_that_chance_left_plain_hides_the_locus_by_chance() {
        for (Model model : List.of(spotted(), summed())) {
            CompiledModel compiled = CompiledModel.of(model);
            Animal plain = Animal.unknown(compiled).withLooks(Phenotype.of("spots", "none"));
            Answer answer = Answers.of(compiled, List.of()).coat(new CoatQuestion(plain, Set.of()));
            assertTrue(causes(answer.hidden()).contains(CHANCE), model + " " + answer.hidden());
            assertTrue(
                    AnswerText.of(answer)
                            .replaceAll("\\s+", " ")
                            .contains("the same look by chance, which may give the same spots either way"),
                    AnswerText.of(answer));
            String document = Documents.write(AnswerDocument.of(answer));
            assertTrue(document.contains("\"kind\": \"chance\""), document);
            assertTrue(!document.contains("through locus /"), document);
        }
    }

    @Test
    void a_known_genotype_and_a_kit_hide_it_by_chance_too() {
        Model model = spotted();
        CompiledModel compiled = CompiledModel.of(model);
        Animal carrier = Animal.unknown(compiled).ofSex(Sex.FEMALE).withGenotype("S/s", OmittedLoci.UNKNOWN);
        Answer coat = Answers.of(compiled, List.of()).coat(new CoatQuestion(carrier, Set.of()));
        assertTrue(
                causes(coat.hidden().stream()
                                .filter(one -> one.phenotype().equals(Phenotype.of("spots", "none")))
                                .toList())
                        .contains(CHANCE),
                coat.hidden().toString());
        Genotype parent = Genotype.parse(model, "S/s");
        List<Hidden> kits =
                Cross.of(compiled, parent, parent).explain(List.of("spots")).hidden();
        assertTrue(
                causes(kits.stream()
                                .filter(one -> one.phenotype().equals(Phenotype.of("spots", "none")))
                                .toList())
                        .contains(CHANCE),
                kits.toString());
    }

    @Test
    void what_ways_need_names_loci_or_the_trait_of_a_draw_but_never_a_pointer() {
        List<Condition> ways = List.of(
                Condition.where("S", "spotted").and("/traits/spots/cases/may be", "none"), Condition.where("S", "not"));
        View view = View.of(List.of("spots"));
        assertEquals(CHANCE, Causes.across(ways, view, Set.of("S", "T"), "S"));
        assertEquals(
                new Cause(Cause.Kind.SAME_LOOK, List.of("S")),
                Causes.across(ways.subList(1, 2), view, Set.of("S", "T"), "T"));
    }

    private static Set<Cause> causes(List<Hidden> hidden) {
        Set<Cause> causes = new LinkedHashSet<>();
        hidden.forEach(one -> causes.addAll(one.causes()));
        return causes;
    }
}
