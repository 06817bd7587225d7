package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Trait;

/**
 * A litter with what its being recorded is conditioned on, whatever the model.
 *
 * @param litter the litter
 * @param kits its recorded kits
 * @param born a kit of which nothing is recorded
 * @param earlier a kit that its parents had before and that is taken for granted, if they were chosen by one
 * @param shows a kit that shows what brought the litter to notice
 * @param other a kit that shows anything else
 * @param size how many kits were scored
 * @param chances for each number of kits that show it, the chance to be recorded; empty if the litter would have been in any case
 * @param found the logarithm of the chance that just those were brought to notice who were, given what the kits show
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Noticed(
        Litter litter,
        List<Individual> kits,
        Individual born,
        Optional<Individual> earlier,
        Optional<Individual> shows,
        Optional<Individual> other,
        int size,
        double[] chances,
        double found) {

    /** No litter that is noticed for single kits is larger. */
    private static final int MOST_KITS = 500;

    /** More combinations of states than these are no sign that anybody looks for. */
    private static final int MOST_LOOKS = 4096;

    /** What a kit shows of a sign. */
    private enum Shows {
        SIGN,
        OTHER,
        UNCLEAR
    }

    /** Makes litters ready; ids of supposed kits are none of the pedigree's. */
    static final class Reader {

        private final Pedigree pedigree;
        private final Catalogue catalogue;
        private final Problems problems;
        private final String prefix;

        Reader(Pedigree pedigree, Catalogue catalogue, Problems problems) {
            this.pedigree = pedigree;
            this.catalogue = catalogue;
            this.problems = problems;
            String free = "supposed";
            while (anyBegins(free)) {
                free += "'";
            }
            this.prefix = free;
        }

        private boolean anyBegins(String text) {
            return pedigree.individuals().keySet().stream().anyMatch(id -> id.startsWith(text));
        }

        Noticed read(Litter litter) {
            List<Individual> kits =
                    litter.kits().stream().map(pedigree::individual).toList();
            int size = Math.max(kits.size(), litter.scoredCount().orElse(0));
            Ascertainment how = litter.ascertainment();
            Optional<Sighting> stated = how.noticedBy();
            if (stated.isEmpty()) {
                return plain(litter, kits, Optional.empty(), size);
            }
            Sighting sign = stated.get();
            Individual shows = born(kits).with(observation(sign, Set.of(sign.look())));
            if (how instanceof Ascertainment.ParentsChosen) {
                return plain(litter, kits, Optional.of(shows), size);
            }
            if (size > MOST_KITS) {
                problem(
                        litter,
                        size + " kits are scored",
                        "at most " + MOST_KITS + " in a litter that was noticed for its kits");
                return plain(litter, kits, Optional.empty(), size);
            }
            Optional<Set<Phenotype>> others = others(sign.look());
            if (others.isEmpty()) {
                problem(litter, "too many other looks than \"" + sign.look() + "\"", "a sign of fewer traits");
                return plain(litter, kits, Optional.empty(), size);
            }
            Individual other = born(kits).with(observation(sign, others.get()));
            List<Shows> seen = kits.stream().map(kit -> shows(kit, sign)).toList();
            int certain = (int) seen.stream().filter(Shows.SIGN::equals).count();
            boolean clear = !seen.contains(Shows.UNCLEAR) && (size == kits.size());
            return how instanceof Ascertainment.Probands probands
                    ? probands(litter, kits, shows, other, probands, certain, clear)
                    : atLeastOne(litter, kits, shows, other, size, certain);
        }

        private Noticed plain(Litter litter, List<Individual> kits, Optional<Individual> earlier, int size) {
            return new Noticed(
                    litter, kits, born(kits), earlier, Optional.empty(), Optional.empty(), size, new double[0], 0);
        }

        private Noticed atLeastOne(
                Litter litter, List<Individual> kits, Individual shows, Individual other, int size, int certain) {
            if (certain == 0) {
                problem(
                        litter,
                        "it is recorded because at least one kit showed something, but of none is that recorded for certain",
                        "the kit that shows it");
            }
            return noticed(litter, kits, shows, other, size, k -> k == 0 ? 0 : 1, 0);
        }

        private Noticed probands(
                Litter litter,
                List<Individual> kits,
                Individual shows,
                Individual other,
                Ascertainment.Probands how,
                int certain,
                boolean clear) {
            OptionalInt count = how.count();
            if (!clear || (certain == 0) || (count.orElse(1) > certain)) {
                problem(
                        litter,
                        "it is recorded through probands, but "
                                + (clear
                                        ? certain + " of its kits show what they show"
                                        : "of some scored kits it is not recorded whether they do"),
                        count.isPresent()
                                ? "at least " + count.getAsInt() + " that do, and no doubt about others"
                                : "at least one that does, and no doubt about others");
            }
            double chance = how.chance().toDouble();
            double missed = 1 - chance;
            IntToDoubleFunction noticed = k -> -Math.expm1(k * Math.log1p(-chance));
            double found = count.isPresent()
                    ? count.getAsInt() * Math.log(chance)
                            + (certain == count.getAsInt() ? 0 : (certain - count.getAsInt()) * Math.log(missed))
                    : Math.log(noticed.applyAsDouble(certain));
            return noticed(litter, kits, shows, other, kits.size(), noticed, found);
        }

        private Noticed noticed(
                Litter litter,
                List<Individual> kits,
                Individual shows,
                Individual other,
                int size,
                IntToDoubleFunction chance,
                double found) {
            double[] chances = new double[size + 1];
            for (int k = 1; k <= size; k++) {
                chances[k] = chance.applyAsDouble(k);
            }
            return new Noticed(
                    litter,
                    kits,
                    born(kits),
                    Optional.empty(),
                    Optional.of(shows),
                    Optional.of(other),
                    size,
                    chances,
                    found);
        }

        /** A kit of the same parents; of those who are not recorded, its litter-mates may say where they are from. */
        private Individual born(List<Individual> mates) {
            Individual any = Individual.of(prefix);
            return mates.stream()
                    .flatMap(mate -> mate.population().stream())
                    .findFirst()
                    .map(any::from)
                    .orElse(any);
        }

        private void problem(Litter litter, String what, String expected) {
            problems.add(
                    "ascertainment-unlike-records",
                    "/litters/" + litter.id() + "/ascertainment",
                    "litter " + litter.id() + ": " + what,
                    expected);
        }

        /** All other looks of the same traits. */
        private Optional<Set<Phenotype>> others(Phenotype look) {
            List<Phenotype> all = new ArrayList<>(List.of(Phenotype.unspecified()));
            for (String id : look.traits()) {
                Trait trait = catalogue.trait(id).orElseThrow();
                List<Phenotype> longer = new ArrayList<>();
                for (Phenotype one : all) {
                    for (String state : trait.states()) {
                        Map<String, String> states = new LinkedHashMap<>(one.asMap());
                        states.put(id, state);
                        longer.add(Phenotype.from(states));
                    }
                }
                all = longer;
                if (all.size() > MOST_LOOKS) {
                    return Optional.empty();
                }
            }
            all.remove(look);
            return all.isEmpty() ? Optional.empty() : Optional.of(new LinkedHashSet<>(all));
        }

        private static Observation observation(Sighting sign, Set<Phenotype> looks) {
            return new Observation(
                    Optional.empty(), sign.stage(), looks, sign.light(), Optional.empty(), Optional.empty());
        }

        /** What the records of a kit say of a sign, where it was looked at as early or late as the sign says, if it says. */
        private static Shows shows(Individual kit, Sighting sign) {
            Shows found = Shows.UNCLEAR;
            for (Observation seen : kit.observations()) {
                boolean then = sign.stage().equals(seen.stage()) || sign.stage().equals(LifeStage.unstated());
                if (then && seen.traits().containsAll(sign.look().traits())) {
                    if (seen.looks().stream().allMatch(look -> look.shows(sign.look()))) {
                        return Shows.SIGN;
                    }
                    if (seen.looks().stream().noneMatch(look -> look.shows(sign.look()))) {
                        found = Shows.OTHER;
                    }
                }
            }
            return found;
        }
    }

    static Individual renamed(Individual kit, String id) {
        return new Individual(
                id,
                kit.sex(),
                kit.born(),
                kit.population(),
                kit.observations(),
                kit.names(),
                kit.tests(),
                kit.hearing(),
                kit.fertility());
    }

    /** Kits of which so many show the sign. */
    List<Individual> supposed(int showing) {
        ImmutableList.Builder<Individual> all = ImmutableList.builder();
        for (int k = 0; k < size; k++) {
            Individual kit = (k < showing ? shows : other).orElseThrow();
            all.add(renamed(kit, kit.id() + " " + k));
        }
        return all.build();
    }

    /** Whether nothing but the kits that were recorded is to be reckoned with. */
    boolean isPlain() {
        return chances.length == 0 && earlier.isEmpty();
    }

    /** The recorded kits, after the earlier one if there is one. */
    List<Individual> recorded() {
        return earlier.isEmpty()
                ? kits
                : ImmutableList.<Individual>builder()
                        .add(earlier.get())
                        .addAll(kits)
                        .build();
    }

    /** Whether anything that is compared was recorded of an animal. */
    static boolean isRecorded(Individual one) {
        return !one.observations().isEmpty() || !one.tests().isEmpty();
    }

    /** A kit of which nothing is recorded; its sex may still show where it is a parent. */
    static Individual unrecorded(Individual kit) {
        Individual bare = Individual.of(kit.id());
        return kit.population().map(bare::from).orElse(bare);
    }

    /** A kit of which only its sex is recorded. */
    static Individual bare(Individual kit) {
        return kit.sex().map(unrecorded(kit)::with).orElse(unrecorded(kit));
    }

    /** The litter with other kits in place of its own. */
    Noticed with(List<Individual> others) {
        return new Noticed(litter, others, born, earlier, shows, other, size, chances, found);
    }

    /** The litter without its records; nothing brought it to notice. */
    Noticed blank() {
        return new Noticed(
                litter,
                kits.stream().map(Noticed::unrecorded).toList(),
                born,
                Optional.empty(),
                shows,
                other,
                size,
                new double[0],
                0);
    }

    /** The litter without the records of one kit. */
    Noticed blank(Individual kit) {
        return with(kits.stream()
                .map(one -> one.id().equals(kit.id()) ? unrecorded(one) : one)
                .toList());
    }
}
