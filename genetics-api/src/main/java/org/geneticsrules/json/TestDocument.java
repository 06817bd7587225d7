package org.geneticsrules.json;

import java.util.Optional;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.TestMate;
import org.geneticsrules.answer.TestResult;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.model.Population;

/** The document form of what test matings would take. Stateless and thread-safe. */
final class TestDocument {

    private TestDocument() {}

    static Node of(TestResult test) {
        return new ObjectBuilder()
                .with(
                        "allele",
                        new ObjectBuilder()
                                .with("locus", test.allele().locus())
                                .with("id", test.allele().allele().id())
                                .build())
                .with("mate", mate(test.mate()))
                .with("traits", Node.texts(test.traits()))
                .with("signs", AnswerDocument.list(test.signs(), AnswerDocument::phenotype))
                .with("courses", AnswerDocument.list(test.courses(), TestDocument::course))
                .with("exclusions", AnswerDocument.list(test.exclusions(), TestDocument::exclusion))
                .build();
    }

    private static Node mate(TestMate mate) {
        return new ObjectBuilder()
                .with("name", mate.name())
                .with("kind", mate.kind().word())
                .with("animals", AnswerDocument.list(mate.animals(), (Animal animal) -> Node.texts(animal.given())))
                .with("seen", AnswerDocument.list(mate.seen(), AnswerDocument::sighting))
                .with("sibs", Node.flag(mate.sibs()))
                .with("relation", mate.relation().word())
                .build();
    }

    private static Node course(TestResult.Course course) {
        return new ObjectBuilder()
                .with("step", course.step().words())
                .with("population", course.population().map(Population::id))
                .with("bound", Node.flag(course.bound()))
                .with("neverMissedByLessThan", Chances.of(course.detection().limit()))
                .with("needed", AnswerDocument.list(course.needed(), TestDocument::needed))
                .build();
    }

    private static Node needed(TestResult.Needed needed) {
        ObjectBuilder node = new ObjectBuilder().with("confidence", Chances.of(needed.confidence()));
        fewest(node, "toShow", needed.toShow());
        fewest(node, "toBelieve", needed.toBelieve());
        return node.build();
    }

    private static void fewest(ObjectBuilder node, String name, Optional<Detection.Fewest> fewest) {
        fewest.ifPresent(found -> {
            ObjectBuilder number = new ObjectBuilder();
            if (found instanceof Detection.Reached reached) {
                number.with("steps", Node.number(reached.steps())).with("missed", Chances.of(reached.missed()));
            } else {
                number.with("never", Node.flag(true));
            }
            node.with(name, number.build());
        });
    }

    private static Node exclusion(TestResult.Exclusion exclusion) {
        return new ObjectBuilder()
                .with("caution", exclusion.name())
                .with("line", exclusion.line())
                .with("about", exclusion.about())
                .build();
    }
}
