package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.GenotypeText;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * An answer rests on the statements it cites: any other may say anything else, and if one that it cites does, the answer is another one.
 *
 * <p>Every statement of the default model is made to say something else, and all questions are asked again.
 */
@Tag("default-jdk")
class RelevantEvidenceTest {

    /** What comes of a mating of two parents of one description. */
    private record Question(String parents, Optional<String> population, View view) {

        static Question of(String parents, String... traits) {
            return new Question(
                    parents,
                    Optional.empty(),
                    View.of(List.of(traits)).at(LifeStage.atMoult(1).in("winter")));
        }

        Question from(String herd) {
            return new Question(parents, Optional.of(herd), view);
        }

        private UncertainCross under(CompiledModel compiled) {
            Model model = compiled.model();
            Parent parent = Parent.among(
                    GenotypeText.of(model).parse(parents, OmittedLoci.WILD_TYPE).genotypes());
            Parent weighed = population
                    .map(name -> parent.from(model.populations().get(name)))
                    .orElse(parent);
            return UncertainCross.of(compiled, weighed, weighed);
        }

        Distribution<Phenotype> kits(CompiledModel compiled) {
            return under(compiled).probable(view).orElseThrow();
        }

        /** Pointers of the statements cited, without the population, which is part of the question. */
        Set<String> cited(CompiledModel compiled) {
            return under(compiled).explain(view).orElseThrow().statements();
        }
    }

    private static final List<Question> QUESTIONS = List.of(
            Question.of("C/c", "eye colour"),
            Question.of("C/c B/b", "hue", "eye colour"),
            Question.of("cs/c P/p", "dilution", "trunk suppression"),
            Question.of("cl/cs L/l", "dilution", "coat length", "nose colour"),
            Question.of("C/ce B/b R/r", "hue"),
            Question.of("c/c B/b", "hue", "nose colour"),
            Question.of("B/-", "hue").from("few carriers"),
            Question.of("M/m B/b", "white guard hairs", "hue"),
            Question.of("W/w H/h", "throat", "head white", "mask"),
            Question.of("W/w", "belly", "knees"),
            Question.of("W/w C/c", "left front foot"),
            Question.of("W/w", "right hind foot", "tail tip"),
            Question.of("W/w", "right front foot", "body patches"),
            Question.of("W/w M/m", "left hind foot"),
            Question.of("P/p cl/ce", "pattern visible"),
            Question.of("P/p D1/d1 D2/d2", "trunk depth"));

    private static final CompiledModel COMPILED = Ferret.compiled();
    private static final StatementEdits EDITS = new StatementEdits(COMPILED.model());

    /** A question with its answer under the model as it is. */
    private record Asked(Question question, Distribution<Phenotype> kits, Set<String> cited, Set<String> words) {
        static Asked of(Question question) {
            Set<String> cited = question.cited(COMPILED);
            return new Asked(question, question.kits(COMPILED), cited, texts(COMPILED.model(), cited));
        }
    }

    private static final List<Asked> ASKED = QUESTIONS.stream().map(Asked::of).toList();

    private static Set<String> texts(Model model, Set<String> pointers) {
        return pointers.stream()
                .map(pointer -> model.statements().get(pointer).text())
                .collect(Collectors.toSet());
    }

    static Stream<String> statements() {
        return COMPILED.model().statements().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("statements")
    void a_statement_may_say_anything_where_it_is_not_cited_and_nothing_else_where_it_is(String pointer) {
        List<CompiledModel> others = EDITS.replacing(pointer).stream()
                .filter(other -> !other.equals(COMPILED.model()))
                .map(CompiledModel::of)
                .toList();
        for (Asked asked : ASKED) {
            boolean weighs =
                    asked.question().population().stream().anyMatch(name -> pointer.equals("/populations/" + name));
            boolean cited = weighs || asked.cited().contains(pointer);
            boolean changes = false;
            for (CompiledModel other : others) {
                boolean same = asked.kits().equals(asked.question().kits(other));
                assertTrue(cited || same, () -> asked.question() + " does not cite " + pointer);
                changes |= !same;
            }
            assertTrue(
                    !cited || changes || cannotBeSpared(pointer, asked), () -> asked.question() + " cites " + pointer);
        }
    }

    /** Whether without a statement there is no valid model, the kits are others, or they rest on other statements. */
    private static boolean cannotBeSpared(String pointer, Asked asked) {
        Optional<CompiledModel> without = EDITS.without(pointer).map(CompiledModel::of);
        return without.isEmpty()
                || !asked.kits().equals(asked.question().kits(without.get()))
                || !asked.words()
                        .equals(texts(without.get().model(), asked.question().cited(without.get())));
    }

    @Test
    void the_questions_reach_every_kind_of_statement() {
        Set<String> reached = new LinkedHashSet<>();
        ASKED.forEach(asked -> reached.addAll(asked.cited()));
        Model model = COMPILED.model();
        List<String> parts = new ArrayList<>();
        model.loci().keySet().forEach(locus -> parts.add("/loci/" + locus + "/dominance/shows/"));
        model.rules().keySet().forEach(trait -> parts.add("/traits/" + trait + "/"));
        model.masks().keySet().forEach(mask -> parts.add("/masks/" + mask));
        assertEquals(
                List.of(),
                parts.stream()
                        .filter(part -> reached.stream().noneMatch(pointer -> pointer.startsWith(part)))
                        .toList());
        long able = model.statements().keySet().stream()
                .filter(pointer -> !pointer.startsWith("/populations/"))
                .count();
        assertTrue(reached.size() * 10L >= able * 8, () -> "only " + reached.size() + " of " + able);
    }

    @Test
    void the_hue_of_albinos_rests_on_what_hides_it_alone() {
        assertEquals(
                Set.of("/loci/C/dominance/shows/c", "/masks/albino"),
                Question.of("c/c B/b M/m", "hue").cited(COMPILED));
    }
}
