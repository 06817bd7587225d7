package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.planning.EstimatedPower;
import org.geneticsrules.planning.Power;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.simulation.DrawnPedigree;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.PlannedTest;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.simulation.Whom;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** Litters drawn from a model, with their truth, by how they came to be recorded, and what they would tell. */
final class DrawnLitters {

    private static final Catalogue TRAITS = Catalogue.builder("sample.drawn.traits", "1.0.0")
            .trait("coat", "dark", "white")
            .build();

    private DrawnLitters() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        Model white = white("white is recessive", "white");
        Model dark = white("white is never seen", "dark");
        // sample
        Simulation drawing = Simulation.of(CompiledModel.of(white))
                .seeded(7)
                .looking(PlannedLook.at("coat").of(Whom.KITS))
                .testing(PlannedTest.at("C").of(Whom.FOUNDERS));
        Founder carrier = Founder.of(Genotype.parse(white, "C/c"));
        LitterPlan one = LitterPlan.of(carrier, carrier, 1, LitterSize.of(3));
        DrawnPedigree drawn = drawing.couples(one).findFirst().orElseThrow();
        drawn.records()
                .litters()
                .values()
                .forEach(litter -> litter.kits()
                        .forEach(kit -> out.println(kit + " is recorded as "
                                + drawn.animal(kit).state(0, "coat").orElseThrow() + ", and is "
                                + drawn.animal(kit).genotype())));

        Sighting sign = Sighting.of(Phenotype.of("coat", "white"));
        Founder any = Founder.from(white, "herd");
        LitterPlan many = LitterPlan.of(carrier, carrier, 2_000, LitterSize.of(3));
        LitterPlan ofAny = LitterPlan.of(any, any, 2_000, LitterSize.of(3));
        share(out, "complete", drawing, many);
        share(out, "at least one", drawing.keeping(new Ascertainment.AtLeastOne(sign)), many);
        share(out, "parents chosen", drawing.keeping(new Ascertainment.ParentsChosen(sign)), ofAny);

        LitterPlan three = LitterPlan.of(carrier, carrier, 3, LitterSize.of(4));
        EstimatedPower power = Power.of(List.of(Candidate.of(white), Candidate.of(dark)), 0, drawing, three)
                .from("herd")
                .drawing(2_000)
                .estimate();
        out.printf(
                Locale.ROOT,
                "three litters of four: right in %.3f, misled in %.3f; half of the sets need %d litter%n",
                power.share(power.reached()),
                power.share(power.misled()),
                power.littersUntil(0.5).orElseThrow());
        // end
        return Shown.of(drawn.records(), TRAITS);
    }

    /** How many kits are recorded as white. */
    private static void share(PrintStream out, String how, Simulation drawing, LitterPlan plan) {
        DrawnPedigree drawn = drawing.couples(plan).findFirst().orElseThrow();
        long kits = drawn.litters().values().stream()
                .mapToLong(litter -> litter.kits().size())
                .sum();
        long white = drawn.litters().values().stream()
                .flatMap(litter -> litter.kits().stream())
                .filter(kit -> kit.isRecordedWith(Phenotype.of("coat", "white")))
                .count();
        out.printf(Locale.ROOT, "%s: %.3f of the kits are white%n", how, (double) white / kits);
    }

    private static Model white(String title, String shown) {
        return Model.builder("sample." + title.replace(' ', '-'), "1.0.0", TRAITS)
                .title(title)
                .locus(
                        "C",
                        c -> c.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "full")
                                .shows("c", "none"))
                .trait(
                        "coat",
                        coat -> coat.when(Condition.where("C", "none"), shown).otherwise("dark"))
                .population(
                        "herd",
                        founders -> founders.frequency("C", "C", Probability.of(7, 10))
                                .frequency("C", "c", Probability.of(3, 10)))
                .build();
    }
}
