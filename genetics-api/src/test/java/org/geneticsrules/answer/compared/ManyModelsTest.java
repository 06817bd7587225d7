package org.geneticsrules.answer.compared;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.seen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.LitterText;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What is said where many models are compared: verdicts stay sentences, and numbers that are the same stand together. */
class ManyModelsTest {

    private static LitterAnswer favour(Pedigree pedigree, Model first, List<Candidate> others) {
        return LitterAnswers.of(RecordedAnswers.of(Answers.of(CompiledModel.of(first), List.of()), pedigree))
                .favour(others);
    }

    private static PedigreeBuilder couple() {
        return Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
    }

    @Test
    void models_alike_are_listed_as_far_as_a_sentence_bears() {
        List<Candidate> others = new ArrayList<>();
        for (int k = 1; k <= 9; k++) {
            others.add(Candidate.of(Coats.recessive("rare " + k, Probability.of(1, 2L + k))));
        }
        others.add(Candidate.of(Coats.lethal()));
        LitterAnswer answer = favour(Coats.ofCarriers(9, 3), Coats.recessive(), others);
        assertTrue(
                answer.verdict().contains("1.22 : 1 likelier under \"recessive\" than under \"lethal\""),
                answer.verdict());
        assertTrue(
                answer.verdict().contains("as \"rare 1\", \"rare 2\", \"rare 3\", \"rare 4\", \"rare 5\" and 4 more;"),
                answer.verdict());
        String text = LitterText.of(answer);
        // ten models share one number, the eleventh has another
        String alike = String.format(Locale.ROOT, "%.4f", 9 * Math.log(0.75) + 3 * Math.log(0.25));
        String lethal = String.format(Locale.ROOT, "%.4f", 9 * Math.log(2.0 / 3) + 3 * Math.log(1.0 / 3));
        assertTrue(
                text.replaceAll("\\s+", " ")
                        .contains("litter litter: " + alike + " under 1, 2, 3, 4, 5, 6 and 4 more; " + lethal
                                + " under 11"),
                text);
        text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
    }

    /** All but the recessive model are excluded by one light kit, each on the word of the same animals. */
    @Test
    void excluded_models_that_hang_on_the_same_records_are_told_together() {
        Pedigree pedigree = Coats.litter(couple(), "first", "", 5, 1, Ascertainment.complete())
                .build();
        List<Candidate> others = new ArrayList<>();
        for (int k = 1; k <= 7; k++) {
            others.add(Candidate.of(dominant("dominant " + k)));
        }
        LitterAnswer answer = favour(pedigree, Coats.recessive(), others);
        assertTrue(
                answer.verdict()
                        .startsWith(
                                "The records exclude \"dominant 1\", \"dominant 2\", \"dominant 3\", \"dominant 4\","
                                        + " \"dominant 5\" and 2 more, and allow \"recessive\". That hangs on single records: without"
                                        + " any one of those of sire, dam and first.5 the rest is possible. Look at them again,"),
                answer.verdict());
    }

    private static Model dominant(String id) {
        return Model.builder(id, "1", Coats.TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("d", "D")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "light"), "light")
                                .otherwise("dark"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    /** Each of two models is excluded by another kit: light of dark parents, dark of light parents. */
    @Test
    void excluded_models_that_hang_on_different_records_are_told_apart() {
        PedigreeBuilder builder = couple();
        Coats.litter(builder, "first", "", 3, 1, Ascertainment.complete());
        builder.add(seen("sire 2", Coats.LIGHT)).add(seen("dam 2", Coats.LIGHT));
        Coats.litter(builder, "second", " 2", 1, 3, Ascertainment.complete());
        LitterAnswer answer = favour(builder.build(), Coats.recessive(), List.of(Candidate.of(Coats.dominant())));
        assertEquals(
                "None of these models allows the records. That hangs on single records: without any one of those of sire 2,"
                        + " dam 2 and second.0 the rest is possible under \"recessive\" and without any one of those of sire, dam"
                        + " and first.3 under \"dominant\". Look at them again, or allow for errors of naming.",
                answer.verdict());
        assertTrue(answer.decided());
    }

    private static final Catalogue SPOTS = Catalogue.builder("spots", "1")
            .trait("coat", "dark", "light")
            .trait("spot", "none", "round", "long")
            .build();

    private static CaseState.Chance evenly(String... states) {
        Map<String, Probability> chances = new HashMap<>();
        for (String state : states) {
            chances.put(state, Probability.of(1, states.length));
        }
        return new CaseState.Chance(Distribution.of(chances));
    }

    private static ModelBuilder spotted(String id) {
        return Model.builder(id, "1", SPOTS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)));
    }

    /**
     * Six light kits of six litters of carriers, all without spots: (1/4)^6 where light is recessive and none has spots, which is the
     * unlikeliest outcome of all; (1/2 1/3)^6 where both are left to chance, which is less, and as likely as any other outcome.
     */
    @Test
    void a_best_model_that_goes_badly_settles_nothing_where_another_does_not() {
        Model recessive = spotted("recessive")
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "light"), "light")
                                .otherwise("dark"))
                .trait("spot", rule -> rule.otherwise("none"))
                .build();
        Model chance = spotted("chance")
                .trait("coat", rule -> rule.otherwise(evenly("dark", "light"), Optional.empty()))
                .trait("spot", rule -> rule.otherwise(evenly("none", "round", "long"), Optional.empty()))
                .build();
        PedigreeBuilder builder = Pedigree.builder("spots", "1");
        for (Sex sex : Sex.values()) {
            builder.add(Individual.of(sex.word(), sex)
                    .with(new GenotypeTest(Optional.empty(), "A", Set.of("D/d"), Probability.ZERO)));
        }
        for (int k = 0; k < 6; k++) {
            builder.add(Individual.of("kit " + k)
                            .with(Observation.of(LifeStage.unstated(), Phenotype.parse("coat: light, spot: none"))))
                    .add(Litter.of("litter " + k, "female", "male", "kit " + k).with(Ascertainment.complete()));
        }
        LitterAnswer answer = favour(builder.build(), recessive, List.of(Candidate.of(chance)));
        assertTrue(
                answer.verdict()
                        .startsWith("The best of these models, \"recessive\", goes badly with the litters (p 0.000"),
                answer.verdict());
        assertTrue(
                answer.verdict()
                        .endsWith(
                                "), and \"chance\", under which they are less likely, does not (p 1.00). That settles nothing."),
                answer.verdict());
        assertFalse(answer.decided());
    }
}
