package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.GenotypeText;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** An answer rests on the statements it cites: all others may say anything, and none that it cites may be taken out. */
class RelevantEvidenceTest {

    /** A mating of two parents of one description. */
    record Question(String parents, Optional<String> population, View view) {

        Question(String parents, Optional<String> population, List<String> traits) {
            this(parents, population, View.of(traits).at(LifeStage.atMoult(1).in("winter")));
        }

        /** The kits, and the words of what their chances rest on. */
        Answer ask(Model model) {
            CompiledModel compiled = CompiledModel.of(model);
            Parent parent = Parent.among(
                    GenotypeText.of(model).parse(parents, OmittedLoci.WILD_TYPE).genotypes());
            Parent weighed = population
                    .map(name -> parent.from(model.populations().get(name)))
                    .orElse(parent);
            UncertainCross cross = UncertainCross.of(compiled, weighed, weighed);
            MatingExplanation explanation = cross.explain(view).orElseThrow();
            return new Answer(
                    cross.probable(view).orElseThrow(),
                    explanation.statements(),
                    explanation.statements().stream()
                            .map(pointer -> model.statements().get(pointer).text())
                            .collect(Collectors.toSet()));
        }
    }

    record Answer(Distribution<Phenotype> kits, Set<String> pointers, Set<String> words) {

        boolean sameAs(Answer other) {
            return kits.equals(other.kits) && words.equals(other.words);
        }

        /** The same kits, resting on nothing else. They may rest on less: where no silver coat whitens, none has to be ruled out. */
        boolean covers(Answer other) {
            return kits.equals(other.kits) && words.containsAll(other.words);
        }
    }

    static Stream<Question> questions() {
        return Stream.of(
                new Question("C/c", Optional.empty(), List.of("eye colour")),
                new Question("C/c B/b", Optional.empty(), List.of("hue", "eye colour")),
                new Question("cs/c P/p", Optional.empty(), List.of("dilution", "trunk suppression")),
                new Question("C/ce B/b R/r", Optional.empty(), List.of("hue")),
                new Question("L/l c/c", Optional.empty(), List.of("coat length", "nose colour")),
                new Question("B/-", Optional.of("few carriers"), List.of("hue")),
                new Question("M/m B/b", Optional.empty(), List.of("white guard hairs", "hue")),
                new Question("W/w H/h", Optional.empty(), List.of("throat", "head white", "mask")),
                new Question("D1/d1 p/p", Optional.empty(), List.of("trunk depth")),
                new Question("P/p D2/d2", Optional.empty(), List.of("trunk depth")));
    }

    @ParameterizedTest
    @MethodSource("questions")
    void statements_that_are_not_cited_may_say_anything_else(Question question) {
        Model model = Ferret.common();
        StatementEdits edits = new StatementEdits(model);
        Answer before = question.ask(model);
        int replaced = 0;
        int turn = question.parents().length();
        for (String pointer : model.statements().keySet()) {
            // Each question tries a third of the statements, another third than its neighbours.
            if (turn++ % 3 != 0) {
                continue;
            }
            // Which population weighs is part of the question, so the explanation of the mating does not cite it.
            if (before.pointers().contains(pointer)
                    || question.population().stream().anyMatch(name -> pointer.equals("/populations/" + name))) {
                continue;
            }
            Optional<Model> changed = edits.replaced(pointer);
            if (changed.isPresent()) {
                replaced++;
                assertTrue(before.covers(question.ask(changed.get())), pointer);
            }
        }
        int count = replaced;
        assertTrue(count >= 20, () -> "only " + count + " replacements");
    }

    @ParameterizedTest
    @MethodSource("questions")
    void no_statement_that_is_cited_can_be_taken_out(Question question) {
        Model model = Ferret.common();
        StatementEdits edits = new StatementEdits(model);
        Answer before = question.ask(model);
        assertFalse(before.pointers().isEmpty());
        for (String pointer : before.pointers()) {
            // No valid model is left, the kits differ, or the same kits now rest on other statements.
            edits.without(pointer).ifPresent(changed -> assertFalse(before.sameAs(question.ask(changed)), pointer));
        }
    }

    @ParameterizedTest
    @MethodSource("questions")
    void what_a_cited_state_or_expression_says_changes_the_kits(Question question) {
        Model model = Ferret.common();
        StatementEdits edits = new StatementEdits(model);
        Answer before = question.ask(model);
        int changes = 0;
        for (String pointer : before.pointers()) {
            if (pointer.startsWith("/traits/")) {
                List<Model> others = edits.replacing(pointer).stream()
                        .filter(changed -> !changed.equals(model))
                        .toList();
                long telling = others.stream()
                        .filter(changed ->
                                !before.kits().equals(question.ask(changed).kits()))
                        .count();
                // A state that is not asked for but read, by a case or a mask, may say something else that comes to the
                // same.
                boolean asked = question.view().traits().stream()
                        .anyMatch(trait -> pointer.startsWith("/traits/" + trait + "/"));
                assertTrue(asked ? telling == others.size() : telling > 0, pointer);
                changes += others.size();
            }
        }
        assertTrue(changes > 0);
    }
}
