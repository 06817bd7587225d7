package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** A pedigree of the reference as one of the library. */
public final class RecordedKindred {

    private RecordedKindred() {}

    /**
     * Makes all kits of a pedigree such as lived to be scored, which is what the library takes kits for.
     *
     * @param kindred a pedigree
     * @return the same with other censuses
     */
    public static Kindred scored(Kindred kindred) {
        List<Kindred.Litter> litters = new ArrayList<>();
        kindred.litters()
                .forEach(litter -> litters.add(new Kindred.Litter(
                        litter.id(),
                        litter.dam(),
                        litter.population(),
                        litter.sires(),
                        litter.sirePerKit(),
                        "scored",
                        litter.kits())));
        return new Kindred(kindred.members(), litters, kindred.confusions());
    }

    /**
     * Translates the animals and their records.
     *
     * @param model the model that names the genotypes
     * @param kindred a pedigree
     * @return the same for the library
     */
    public static Pedigree pedigree(Model model, Kindred kindred) {
        PedigreeBuilder builder = Pedigree.builder("kindred", "1");
        for (Kindred.Member member : kindred.members()) {
            List<Observation> observations = new ArrayList<>();
            for (Kindred.Sighting sighting : member.sightings()) {
                Set<Phenotype> looks = new LinkedHashSet<>();
                sighting.looks().forEach(look -> looks.add(Phenotype.from(look)));
                observations.add(new Observation(Optional.empty(), stage(sighting.stage()), looks));
            }
            List<GenotypeTest> tests = new ArrayList<>();
            for (Kindred.Test test : member.tests()) {
                Set<String> result = new LinkedHashSet<>();
                test.reported().forEach(pair -> {
                    if (!pair.isEmpty()) {
                        result.add(RandomModels.genotype(model, Map.of(test.locus(), pair))
                                .toString());
                    }
                });
                if (!result.isEmpty()) {
                    tests.add(new GenotypeTest(Optional.empty(), test.locus(), result, test.error()));
                }
            }
            Optional<String> population = Optional.of(member.population())
                    .filter(id -> !id.isEmpty())
                    .or(() -> kindred.litterOf(member.id())
                            .map(Kindred.Litter::population)
                            .filter(id -> !id.isEmpty()));
            builder.add(new Individual(
                    member.id(),
                    Optional.of(member.sex()).filter(sex -> !sex.isEmpty()).map(RecordedKindred::sex),
                    Optional.empty(),
                    population,
                    observations,
                    List.of(),
                    tests,
                    List.of(),
                    Fertility.UNKNOWN));
        }
        for (Kindred.Litter litter : kindred.litters()) {
            builder.add(new Litter(
                    litter.id(),
                    Optional.of(litter.dam()).filter(id -> !id.isEmpty()),
                    paternity(litter),
                    Optional.empty(),
                    OptionalInt.empty(),
                    OptionalInt.empty(),
                    Optional.empty(),
                    litter.kits()));
        }
        return builder.build();
    }

    private static Paternity paternity(Kindred.Litter litter) {
        List<Kindred.Candidate> sires = litter.sires();
        if (sires.size() == 1 && !sires.get(0).id().isEmpty()) {
            return Paternity.of(sires.get(0).id());
        }
        if (sires.size() == 1 && sires.get(0).population().isEmpty()) {
            return Paternity.unknown();
        }
        List<Paternity.Candidate> candidates = new ArrayList<>();
        for (Kindred.Candidate one : sires) {
            candidates.add(
                    one.id().isEmpty()
                            ? new Paternity.Candidate(
                                    Optional.empty(),
                                    Optional.of(one.population()).filter(id -> !id.isEmpty()),
                                    one.share())
                            : Paternity.Candidate.of(one.id(), one.share()));
        }
        return new Paternity.Candidates(candidates, litter.sirePerKit());
    }

    private static Sex sex(String word) {
        return word.equals("male") ? Sex.MALE : Sex.FEMALE;
    }

    private static LifeStage stage(Map<String, String> stage) {
        return new LifeStage(count(stage, "week"), count(stage, "moult"), Optional.ofNullable(stage.get("season")));
    }

    private static OptionalInt count(Map<String, String> stage, String clock) {
        return stage.containsKey(clock) ? OptionalInt.of(Integer.parseInt(stage.get(clock))) : OptionalInt.empty();
    }

    /**
     * Translates the naming errors.
     *
     * @param kindred a pedigree
     * @return its confusions
     */
    public static Confusions confusions(Kindred kindred) {
        return Confusions.of(kindred.confusions().stream()
                .map(one -> new Confusion(one.trait(), one.shown(), one.read(), Optional.empty(), one.chance()))
                .toList());
    }
}
