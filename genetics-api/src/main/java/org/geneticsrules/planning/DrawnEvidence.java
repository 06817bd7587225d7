package org.geneticsrules.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.LitterEvidence;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.comparison.SharedRecords;
import org.geneticsrules.comparison.SharedRecords.Dropped;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.simulation.DrawnAnimal;
import org.geneticsrules.simulation.DrawnLitter;
import org.geneticsrules.simulation.DrawnPedigree;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.PlannedTest;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/** What records of couples and their litters say of models. Couples recorded alike have one number and are compared once. */
final class DrawnEvidence {

    private final List<Candidate> candidates;
    private final Simulation drawing;
    private final LitterPlan plan;
    private final Optional<String> population;
    private final @Nullable IntConsumer watch;
    private final Set<String> traits = new LinkedHashSet<>();
    private final Set<String> loci = new LinkedHashSet<>();
    private final List<Dropped> dropped = new ArrayList<>();
    private final Map<Couple, Integer> numbers = new HashMap<>();

    /** Those that are not compared yet. */
    private final List<Couple> open = new ArrayList<>();

    /** By number of the couple, for each litter the logarithm of its chance under each model, given the litters before. */
    private final List<double[][]> logs = new ArrayList<>();

    /** What was written down of an animal, as far as every model speaks of it. */
    private record Written(Optional<Sex> sex, List<Observation> looks, List<GenotypeTest> tests) {

        boolean isNothing() {
            return looks.isEmpty() && tests.isEmpty();
        }

        Individual of(String id) {
            Individual one = Individual.of(id);
            for (Observation look : looks) {
                one = one.with(look);
            }
            for (GenotypeTest test : tests) {
                one = one.with(test);
            }
            return sex.map(one::with).orElse(one);
        }
    }

    /** What was written down of a litter, kits in an order of their records. */
    private record Brood(List<Written> kits, Ascertainment how) {}

    private record Couple(Written sire, Written dam, List<Brood> litters) {

        boolean isNothing() {
            return litters.stream().flatMap(litter -> litter.kits().stream()).allMatch(Written::isNothing);
        }
    }

    DrawnEvidence(
            List<Candidate> candidates,
            Simulation drawing,
            LitterPlan plan,
            Optional<String> population,
            @Nullable IntConsumer watch) {
        this.candidates = candidates;
        this.drawing = drawing;
        this.plan = plan;
        this.population = population;
        this.watch = watch;
        share();
    }

    /** Only what every model speaks of is compared; that is a matter of the plan, not of what happens to be drawn. */
    private void share() {
        Map<String, List<String>> silent = SharedRecords.unclaimed(candidates);
        for (PlannedLook look : drawing.looks()) {
            for (String trait : look.traits()) {
                List<String> open = silent.getOrDefault(trait, List.of());
                if (!open.isEmpty()) {
                    drop(new Dropped(SharedRecords.Kind.TRAIT, trait, open));
                } else if (!trait.equals(Sex.VARIABLE)) {
                    traits.add(trait);
                }
            }
        }
        for (PlannedTest test : drawing.tests()) {
            Locus known = drawing.model().loci().get(test.locus());
            List<String> strangers = candidates.stream()
                    .filter(one -> known != null && !knows(one.model(), known))
                    .map(Candidate::name)
                    .toList();
            if (strangers.isEmpty()) {
                loci.add(test.locus());
            } else {
                drop(new Dropped(SharedRecords.Kind.LOCUS, test.locus(), strangers));
            }
        }
        if (traits.isEmpty() && loci.isEmpty()) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "nothing-shared",
                            "",
                            "nothing that is planned to be written down is spoken of by every model"
                                    + (dropped.isEmpty() ? "" : ": " + dropped))
                    .expecting("a look at a trait for which every one of these models has a rule without gaps"));
        }
    }

    private void drop(Dropped one) {
        if (!dropped.contains(one)) {
            dropped.add(one);
        }
    }

    private static boolean knows(Model model, Locus locus) {
        Locus own = model.loci().get(locus.id());
        return own != null && own.alleles().keySet().containsAll(locus.alleles().keySet());
    }

    Set<String> traits() {
        return traits;
    }

    List<Dropped> dropped() {
        return dropped;
    }

    /** The number of a couple that was drawn with its litters. */
    int number(DrawnPedigree drawn) {
        List<Brood> broods = new ArrayList<>();
        for (DrawnLitter litter : drawn.litters().values()) {
            broods.add(new Brood(
                    litter.kits().stream()
                            .map(this::written)
                            .sorted(Comparator.comparing(Written::toString))
                            .toList(),
                    litter.ascertainment()));
        }
        DrawnLitter first = drawn.litters().values().iterator().next();
        Couple couple = new Couple(written(first.sire(0)), written(first.dam()), broods);
        return numbers.computeIfAbsent(couple, another -> {
            open.add(another);
            return logs.size() + open.size() - 1;
        });
    }

    private Written written(DrawnAnimal animal) {
        List<Observation> looks = new ArrayList<>();
        for (Observation seen : animal.observations()) {
            List<String> kept = seen.traits().stream().filter(traits::contains).toList();
            if (!kept.isEmpty()) {
                Phenotype look = seen.looks().iterator().next().restrictedTo(kept);
                Observation left = Observation.of(seen.stage(), look);
                looks.add(seen.light().map(left::in).orElse(left));
            }
        }
        return new Written(
                animal.recordedSex(),
                looks,
                animal.tests().stream()
                        .filter(test -> loci.contains(test.locus()))
                        .toList());
    }

    /** By litter of a couple, the logarithm of its chance under each model. */
    double[][] litters(int couple) {
        return logs.get(couple);
    }

    /** Compares what is new. */
    void compare(int done) {
        PedigreeBuilder builder = Pedigree.builder("drawn", "1");
        boolean anything = false;
        for (int c = 0; c < open.size(); c++) {
            if (!open.get(c).isNothing()) {
                anything = true;
                add(open.get(c), logs.size() + c, builder);
            }
        }
        Map<String, double[]> found = anything ? compare(builder.build(), done) : Map.of();
        for (Couple couple : open) {
            double[][] litters = new double[couple.litters().size()][];
            for (int t = 0; t < litters.length; t++) {
                litters[t] = found.getOrDefault(litter(logs.size(), t), new double[candidates.size()]);
            }
            logs.add(litters);
        }
        open.clear();
    }

    private static String litter(int couple, int number) {
        return couple + "." + number;
    }

    private void add(Couple couple, int number, PedigreeBuilder builder) {
        builder.add(parent("sire " + number, couple.sire(), plan.sire().population(), Sex.MALE));
        builder.add(parent("dam " + number, couple.dam(), plan.dam().population(), Sex.FEMALE));
        for (int t = 0; t < couple.litters().size(); t++) {
            Brood brood = couple.litters().get(t);
            if (brood.kits().isEmpty()) {
                continue; // nobody lived to be seen
            }
            List<String> kits = new ArrayList<>();
            for (Written kit : brood.kits()) {
                String id = "kit " + litter(number, t) + "." + kits.size();
                builder.add(kit.of(id));
                kits.add(id);
            }
            builder.add(Litter.of(litter(number, t), "dam " + number, "sire " + number, kits.toArray(String[]::new))
                    .with(brood.how()));
        }
    }

    private static Individual parent(String id, Written written, Optional<String> from, Sex sex) {
        Individual parent = written.of(id).with(sex);
        return from.map(parent::from).orElse(parent);
    }

    private Map<String, double[]> compare(Pedigree records, int done) {
        ModelComparison question = ModelComparison.of(candidates, records).with(drawing.confusions());
        ModelComparison asked = population.map(question::from).orElse(question);
        ComparedModels compared = (watch == null ? asked : asked.watched(() -> watch.accept(done))).compare();
        Map<String, double[]> found = new HashMap<>();
        for (LitterEvidence litter : compared.litters()) {
            double[] of = new double[candidates.size()];
            for (int m = 0; m < of.length; m++) {
                of[m] = litter.known().get(m) ? litter.logs().get(m) : Double.NEGATIVE_INFINITY;
            }
            found.put(litter.litter(), of);
        }
        return found;
    }
}
