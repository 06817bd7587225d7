package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.TestMatingQuestion;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.cross.Mate;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.TestMating;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** How many clear kits it takes until a carrier would have been found out. */
final class TestMatings {

    private TestMatings() {}

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
        Catalogue traits = Catalogue.builder("sample.test.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.test", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Parent carrier = Parent.of(model, Genotype.parse(model, "C/c"));
        TestMating byAlbino = TestMating.of(compiled, Sex.MALE, carrier, Mate.of(Parent.of(model, Genotype.parse(model, "c/c"))));
        TestMating byCarrier = TestMating.of(compiled, Sex.MALE, carrier, Mate.of(carrier));
        TestMating byDaughters = TestMating.of(compiled, Sex.MALE, carrier,
                Mate.ownYoung(Parent.of(model, Genotype.parse(model, "C/C"))));
        View coat = View.of(List.of("coat"));
        Set<Phenotype> white = Set.of(Phenotype.of("coat", "white"));
        LitterSize kit = LitterSize.of(1);
        Map<String, Detection> tests = new LinkedHashMap<>();
        tests.put("kits by an albino", byAlbino.byOneMate(coat, white, kit).orElseThrow());
        tests.put("kits by a known carrier", byCarrier.byOneMate(coat, white, kit).orElseThrow());
        tests.put("own daughters with one kit each", byDaughters.byManyMates(coat, white, kit).orElseThrow());
        tests.put("own daughters with eight kits each", byDaughters.byManyMates(coat, white, LitterSize.of(8)).orElseThrow());
        tests.put("kits by one own daughter", byDaughters.byOneMate(coat, white, kit).orElseThrow());
        tests.forEach((name, test) -> {
            out.print(name + ":");
            for (int odds : new int[] {20, 100, 1000}) {
                Detection.Fewest fewest = test.fewest(Probability.of(1, odds));
                out.print(" " + (fewest instanceof Detection.Reached reached ? reached.steps() : "never"));
            }
            out.println("; never missed by less than " + test.limit());
        });
        // As a front end asks: with what has to be said along, and without matings that are not proposed.
        Animal hob = Animal.unknown(compiled).ofSex(Sex.MALE).withGenotype("C/-", OmittedLoci.WILD_TYPE);
        Answer answer = Answers.of(compiled, List.of())
                .testMatings(TestMatingQuestion.of(hob).carrying(List.of(HiddenAllele.find(model, "c"))));
        out.println(answer.verdict());
        out.println(answer.notices().get(0));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
