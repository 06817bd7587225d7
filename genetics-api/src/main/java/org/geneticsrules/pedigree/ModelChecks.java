package org.geneticsrules.pedigree;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;

/** Compares the records of a pedigree with a model. */
final class ModelChecks {

    private static final int SEXES = 3; // not recorded, female, male

    private final Pedigree pedigree;
    private final Model model;
    private final Problems problems = new Problems(Stage.REFERENCES);

    ModelChecks(Pedigree pedigree, Model model) {
        this.pedigree = pedigree;
        this.model = model;
    }

    List<Problem> problems() {
        pedigree.catalogue()
                .filter(reference -> !reference.means(model.catalogue().reference()))
                .ifPresent(reference -> problems.add(
                        "other-catalogue",
                        "/catalogue",
                        "the records were made with catalogue " + reference + ", but model " + model + " has "
                                + model.catalogue().reference()));
        individuals();
        for (Litter litter : pedigree.litters().values()) {
            Sign.of(litter.ascertainment())
                    .ifPresent(sign ->
                            sign(sign, PedigreeChecks.pointer(litter) + Pointer.of("ascertainment", sign.key())));
            if (litter.sires() instanceof Paternity.Candidates several) {
                for (int i = 0; i < several.candidates().size(); i++) {
                    String pointer = PedigreeChecks.pointer(litter)
                            + Pointer.of("sires", "candidates", Integer.toString(i), "population");
                    several.candidates().get(i).population().ifPresent(name -> population(name, pointer));
                }
            }
        }
        return problems.list();
    }

    private void population(String name, String pointer) {
        if (!model.populations().containsKey(name)) {
            problems.unknown(
                    "unknown-population",
                    pointer,
                    "population",
                    name,
                    model.populations().keySet());
        }
    }

    /** Looks at records once for all individuals of a sex that were recorded alike; at those in which something is wrong one by one. */
    private void individuals() {
        RecordKinds kinds = pedigree.recordKinds();
        Boolean[] sound = new Boolean[kinds.count() * SEXES];
        for (int i = 0; i < pedigree.links.count(); i++) {
            Individual one = pedigree.individualAt(i);
            if (one.population().isPresent()
                    && !model.populations().containsKey(one.population().get())) {
                population(one.population().get(), PedigreeChecks.pointer(one) + "/population");
            }
            int kind = kinds.of(i) * SEXES
                    + one.sex().map(sex -> sex == Sex.FEMALE ? 1 : 2).orElse(0);
            if (sound[kind] == null) {
                ModelChecks alone = new ModelChecks(pedigree, model);
                alone.records(one);
                sound[kind] = alone.problems.list().isEmpty();
            }
            if (!sound[kind]) {
                records(one);
            }
        }
    }

    private void records(Individual one) {
        String pointer = PedigreeChecks.pointer(one);
        for (int i = 0; i < one.observations().size(); i++) {
            Observation seen = one.observations().get(i);
            String at = seen.name()
                    .map(name ->
                            Pointer.of("names", Integer.toString(one.names().indexOf(name))))
                    .orElse(Pointer.of("observations", Integer.toString(i)));
            observation(seen, pointer + at);
        }
        for (int i = 0; i < one.tests().size(); i++) {
            test(one, one.tests().get(i), pointer + Pointer.of("tests", Integer.toString(i)));
        }
    }

    private void sign(Sign sign, String pointer) {
        occasion(sign.sighting().stage(), sign.sighting().light(), pointer);
        look(sign.sighting().look(), pointer + "/look");
    }

    private void observation(Observation seen, String pointer) {
        occasion(seen.stage(), seen.light(), pointer);
        int number = 0;
        for (Phenotype look : seen.looks()) {
            look(look, pointer + Pointer.of("looks", Integer.toString(number++)));
        }
    }

    private void occasion(LifeStage stage, Optional<String> stated, String pointer) {
        List<String> seasons = model.catalogue().seasons();
        stage.season()
                .filter(season -> !seasons.contains(season))
                .ifPresent(season ->
                        problems.unknown("unknown-season", pointer + "/stage/season", "season", season, seasons));
        List<String> lights = model.catalogue().lights();
        stated.filter(light -> !lights.contains(light))
                .ifPresent(light -> problems.unknown("unknown-light", pointer + "/light", "light", light, lights));
    }

    private void look(Phenotype look, String pointer) {
        look.asMap().forEach((name, state) -> {
            Optional<Trait> trait = model.catalogue().trait(name);
            if (trait.isEmpty()) {
                problems.unknown(
                        "unknown-trait",
                        pointer + Pointer.of(name),
                        "trait",
                        name,
                        model.catalogue().traits().keySet());
            } else if (!trait.get().states().contains(state)) {
                problems.unknown(
                        "unknown-state",
                        pointer + Pointer.of(name),
                        "state of " + name,
                        state,
                        trait.get().states());
            }
        });
    }

    private void test(Individual one, GenotypeTest test, String pointer) {
        Locus locus = model.loci().get(test.locus());
        if (locus == null) {
            problems.unknown(
                    "unknown-locus",
                    pointer + "/locus",
                    "locus",
                    test.locus(),
                    model.loci().keySet());
            return;
        }
        Set<AllelePair> pairs;
        try {
            pairs = test.pairs(model);
        } catch (ProblemsException e) {
            // The places in these problems are columns of the text of the test, not of any document.
            e.problems()
                    .forEach(problem -> problems.add(
                            problem.code(),
                            pointer + "/result",
                            problem.message(),
                            problem.expected().or(problem::nearest).orElse("genotype text of locus " + locus)));
            return;
        }
        if (one.sex().isPresent()) {
            Sex sex = one.sex().get();
            int strands = locus.transmission().strands(sex);
            if (pairs.stream().noneMatch(pair -> pair.alleles().size() == strands)) {
                problems.add(
                        "genotype-sex",
                        pointer + "/result",
                        pairs + " is no genotype of a " + sex.word() + " at locus " + locus,
                        locus.pairs(sex).toString());
            }
        }
    }
}
