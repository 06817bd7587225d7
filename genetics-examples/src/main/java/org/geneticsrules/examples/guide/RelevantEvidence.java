package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** An answer rests on the statements that lead to it, and on no others. */
final class RelevantEvidence {

    private RelevantEvidence() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one statement of the model per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.grades.traits", "1.0.0")
                .trait("hue", "black", "brown", "none").trait("eye", "dark", "pink").build();
        Model model = Model.builder("sample.grades", "1.0.0", traits)
                .evidence(new Evidence("albino", Grade.PROVEN, "Albino is recessive.",
                        List.of("Cuénot 1903, in the mouse (from memory)"), List.of()))
                .evidence(new Evidence("brown", Grade.CONJECTURE, "Brown is recessive to black.",
                        List.of("common practice"), List.of("Some hold that brown is a shade of black.")))
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino")
                        .evidence("albino"))
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown")
                        .evidence("brown"))
                .trait("hue", hue -> hue.when(Condition.where("B", "dark"), "black").otherwise("brown").evidence("brown"))
                .trait("eye", eye -> eye.otherwise("dark", Optional.of("albino")))
                .mask(new Mask("albino", Condition.where("C", "albino"),
                        new TreeMap<>(Map.of("eye", Mask.Cover.with("pink"), "hue", Mask.Cover.with("none"))),
                        Set.of(), Optional.of("albino")))
                .build();
        Genotype carrier = Genotype.parse(model, "C/c B/b");
        for (List<String> asked : List.of(List.of("eye"), List.of("eye", "hue"))) {
            Set<String> statements = Cross.of(model, carrier, carrier).explain(asked).statements();
            Grade weakest = Grade.PROVEN;
            for (Statement statement : model.statements().values()) {
                weakest = statements.contains(statement.pointer()) ? weakest.weaker(statement.grade()) : weakest;
            }
            out.println(asked + " rests on what is " + weakest + ":");
            statements.forEach(pointer -> out.println("    " + pointer));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
