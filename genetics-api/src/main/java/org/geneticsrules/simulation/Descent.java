package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Phase;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Links;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Who comes from whom in a pedigree whose animals are to be drawn: of each founder, recorded or not, how it is drawn; of each litter, who its
 * parents may be.
 *
 * <p>A parent who is not recorded is one animal for its litter. It comes from the population that the litter's first kit states, else from
 * that of the other parent, or of that one's dam and so on, else from the one named for all.
 */
final class Descent {

    private final Pedigree pedigree;
    private final Genome genome;
    private final Map<String, Founder> stated;
    private final Optional<String> population;
    private final Problems problems;

    /** By position of an individual, the population it or its line of dams comes from. */
    private final @Nullable String[] origins;

    private final @Nullable FounderDraw[] founders;
    private final Brood[] broods;

    /** What is drawn of one description, sex and place is prepared once. */
    private final Map<List<Object>, FounderDraw> prepared = new LinkedHashMap<>();

    /** A parent: the position of an individual, or one that is not recorded and how it is drawn. */
    record Source(int individual, Optional<FounderDraw> unrecorded) {}

    /**
     * The parents of a litter.
     *
     * @param dam the mother
     * @param sires the males who may be the sire
     * @param shares how likely each is
     * @param perKit whether each kit has a sire of its own
     */
    @SuppressWarnings("ArrayRecordComponent") // read, never compared
    record Brood(Source dam, List<Source> sires, double[] shares, boolean perKit) {}

    /**
     * Prepares a pedigree.
     *
     * @param pedigree the animals and litters
     * @param genome what they may carry
     * @param stated what is known of founders, by id
     * @param population the population of founders that state none
     * @param problems receives what is wrong; then the result is of no use
     */
    Descent(
            Pedigree pedigree,
            Genome genome,
            Map<String, Founder> stated,
            Optional<String> population,
            Problems problems) {
        this.pedigree = pedigree;
        this.genome = genome;
        this.stated = stated;
        this.population = population;
        this.problems = problems;
        Links links = pedigree.links();
        this.origins = new String[links.count()];
        this.founders = new FounderDraw[links.count()];
        this.broods = new Brood[pedigree.litters().size()];
        stated.keySet().forEach(this::check);
        for (int i = 0; i < links.count(); i++) {
            int at = links.inOrder(i);
            Individual one = pedigree.individualAt(at);
            int litter = links.litterOf(at);
            Optional<String> own = one.population();
            if (litter == Links.NONE) {
                Optional<String> from = Optional.ofNullable(stated.get(one.id()))
                        .flatMap(Founder::population)
                        .or(() -> own)
                        .or(() -> population);
                founders[at] = founder(one, from);
                origins[at] = from.orElse(null);
            } else {
                if (broods[litter] == null) {
                    broods[litter] = brood(litter, own);
                }
                int dam = links.dam(litter);
                origins[at] = own.orElse(dam == Links.NONE ? null : origins[dam]);
            }
        }
        for (int litter = 0; litter < broods.length; litter++) {
            if (broods[litter] == null) {
                broods[litter] = brood(litter, Optional.empty());
            }
        }
    }

    private void check(String id) {
        String pointer = Pointer.of("founders", id);
        if (!pedigree.individuals().containsKey(id)) {
            problems.unknown(
                    "unknown-individual",
                    pointer,
                    "individual",
                    id,
                    pedigree.individuals().keySet());
        } else if (pedigree.litterOf(id).isPresent()) {
            problems.add(
                    "no-founder",
                    pointer,
                    "\"" + id + "\" comes from a recorded litter, so what it carries is handed down",
                    "a founder: one of " + pedigree.founders());
        }
    }

    private FounderDraw founder(Individual one, Optional<String> from) {
        Founder known = stated.get(one.id());
        List<Sex> sexes = sex(one).map(List::of).orElseGet(() -> Arrays.asList(Sex.values()));
        return known == null
                ? any(from, sexes, Pointer.of("individuals", one.id()))
                : prepared(
                        new Founder(known.genotypes(), known.phase(), from, known.looks()),
                        sexes,
                        Pointer.of("founders", one.id()));
    }

    /** Its sex if it is stated or follows from being a parent. */
    Optional<Sex> sex(Individual one) {
        if (one.sex().isPresent()) {
            return one.sex();
        }
        List<Litter> litters = pedigree.littersOf(one.id());
        return litters.isEmpty()
                ? Optional.empty()
                : Optional.of(litters.get(0).dam().filter(one.id()::equals).isPresent() ? Sex.FEMALE : Sex.MALE);
    }

    private FounderDraw any(Optional<String> from, List<Sex> sexes, String pointer) {
        return prepared(new Founder(GenotypeSet.all(genome.model()), Phase.unknown(), from), sexes, pointer);
    }

    private FounderDraw prepared(Founder founder, List<Sex> sexes, String pointer) {
        return prepared.computeIfAbsent(
                List.of(founder, sexes), key -> FounderDraw.of(genome, founder, sexes, pointer, problems));
    }

    private Brood brood(int number, Optional<String> stated) {
        Links links = pedigree.links();
        Litter litter = pedigree.litterAt(number);
        String pointer = Pointer.of("litters", litter.id());
        int dam = links.dam(number);
        Optional<String> ofDam = dam == Links.NONE ? Optional.empty() : Optional.ofNullable(origins[dam]);
        Optional<String> ofSire = litter.sires() instanceof Paternity.Known
                ? Optional.ofNullable(origins[links.male(number, 0)])
                : Optional.empty();
        Source mother = dam == Links.NONE
                ? unrecorded(Sex.FEMALE, stated.or(() -> ofSire), pointer + "/dam")
                : new Source(dam, Optional.empty());
        Optional<String> from = stated.or(() -> ofDam);
        if (litter.sires() instanceof Paternity.Candidates several) {
            List<Source> sires = new ArrayList<>();
            List<Double> shares = new ArrayList<>();
            for (Paternity.Candidate one : several.candidates()) {
                sires.add(one.male()
                        .map(id -> new Source(pedigree.positionOf(id), Optional.empty()))
                        .orElseGet(() -> unrecorded(Sex.MALE, one.population().or(() -> from), pointer + "/sires")));
                shares.add(one.share().toDouble());
            }
            double[] chances = shares.stream().mapToDouble(share -> share).toArray();
            return new Brood(mother, sires, chances, several.perKit());
        }
        Source sire = litter.sires() instanceof Paternity.Known
                ? new Source(links.male(number, 0), Optional.empty())
                : unrecorded(Sex.MALE, from, pointer + "/sires");
        return new Brood(mother, List.of(sire), new double[] {1}, false);
    }

    private Source unrecorded(Sex sex, Optional<String> from, String pointer) {
        return new Source(Links.NONE, Optional.of(any(from.or(() -> population), List.of(sex), pointer)));
    }

    Pedigree pedigree() {
        return pedigree;
    }

    /** How a founder is drawn. */
    FounderDraw founder(int individual) {
        FounderDraw found = founders[individual];
        if (found == null) {
            throw new IllegalStateException("individual " + individual + " is no founder");
        }
        return found;
    }

    Brood brood(int litter) {
        return broods[litter];
    }
}
