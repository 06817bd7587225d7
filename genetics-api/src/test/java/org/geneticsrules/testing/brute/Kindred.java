package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/**
 * A pedigree with all that is recorded of it, in plain texts: the facts, without any model.
 *
 * <p>Every member lived to be scored unless its litter says otherwise. A member that is in no litter is a founder. A parent that is
 * not recorded is one animal for a whole litter and another for each litter.
 *
 * @param members the animals that are recorded
 * @param litters who had which kits; a member is in one litter at most
 * @param confusions how often one state is taken for another
 */
public record Kindred(List<Member> members, List<Litter> litters, List<Confusion> confusions) {

    /**
     * An animal.
     *
     * @param id its id, not empty and without {@code /}
     * @param sex {@code female}, {@code male}, or {@code ""} if that is not recorded
     * @param population of a founder, the population it comes from; of a dam, also where unrecorded males come from that are not said
     *     to come from elsewhere; {@code ""} if not stated
     * @param sightings what was seen of it
     * @param tests which genotypes were reported of it
     */
    public record Member(String id, String sex, String population, List<Sighting> sightings, List<Test> tests) {

        /**
         * Copies the lists.
         *
         * @param id its id
         * @param sex its sex
         * @param population where it comes from
         * @param sightings what was seen
         * @param tests what was reported
         */
        public Member {
            if (id.isEmpty() || id.contains("/")) {
                throw new IllegalArgumentException("not an id: " + id);
            }
            sightings = List.copyOf(sightings);
            tests = List.copyOf(tests);
        }
    }

    /**
     * What was seen of an animal at one stage.
     *
     * @param stage when it was looked at
     * @param looks one of these was seen; all name the same traits, so they exclude one another
     */
    public record Sighting(Map<String, String> stage, List<Map<String, String>> looks) {

        /**
         * Copies the looks.
         *
         * @param stage when
         * @param looks one of these was seen
         */
        public Sighting {
            stage = new LinkedHashMap<>(stage);
            List<Map<String, String>> copies = new ArrayList<>();
            looks.forEach(look -> copies.add(new LinkedHashMap<>(look)));
            looks = copies;
            Set<Set<String>> named = new LinkedHashSet<>();
            looks.forEach(look -> named.add(look.keySet()));
            if (named.size() != 1) {
                throw new IllegalArgumentException(
                        "looks of one sighting name different traits, or there is none: " + looks);
            }
        }
    }

    /**
     * A test of one locus.
     *
     * @param locus id of the locus
     * @param reported {@code a/b}, {@code a} or {@code ""}, as in a genotype; one of several
     * @param error the chance that the test reads another genotype, each other one that an animal of its sex can have being read equally
     *     often; where there is no other, no error can happen
     */
    public record Test(String locus, Set<String> reported, Probability error) {

        /**
         * Copies the set.
         *
         * @param locus id of the locus
         * @param reported what was reported
         * @param error how often tests err
         */
        public Test {
            reported = new LinkedHashSet<>(reported);
        }
    }

    /**
     * A male that may be the sire.
     *
     * @param id id of a member, or {@code ""} for a male that is not recorded
     * @param population where an unrecorded male comes from; {@code ""} for where the litter says, or else the dam's population
     * @param share the chance that he is the sire, of the litter or of one kit of it
     */
    public record Candidate(String id, String population, Probability share) {}

    /**
     * A litter.
     *
     * @param id its id
     * @param dam id of a member, or {@code ""} if the dam is not recorded
     * @param population where parents come from that are not recorded; {@code ""} for the dam's population
     * @param sires the males one of which is the sire; their shares sum to 1
     * @param sirePerKit whether each kit has a sire of its own, or the litter has one
     * @param census how far its kits got: {@code born} or {@code scored}; a kit that became a parent was scored in any case
     * @param kits ids of members, at least one
     */
    public record Litter(
            String id,
            String dam,
            String population,
            List<Candidate> sires,
            boolean sirePerKit,
            String census,
            List<String> kits) {

        /**
         * Checks that somebody is the sire of somebody.
         *
         * @param id its id
         * @param dam the dam
         * @param population where unrecorded parents come from
         * @param sires the sires
         * @param sirePerKit whether each kit has its own
         * @param census how far kits got
         * @param kits the kits
         */
        public Litter {
            sires = List.copyOf(sires);
            kits = List.copyOf(kits);
            if (!sires.stream()
                    .map(Candidate::share)
                    .reduce(Probability.ZERO, Probability::plus)
                    .isOne()) {
                throw new IllegalArgumentException("the shares of the sires of " + id + " do not sum to 1");
            } else if (kits.isEmpty()) {
                throw new IllegalArgumentException(id + " has no kits");
            }
        }
    }

    /**
     * One state taken for another. Every trait of every sighting is read by itself; what is not mentioned does not happen.
     *
     * @param trait id of a trait
     * @param read the state that is written down
     * @param shown the state that the animal shows
     * @param chance how often the one is written where the other is shown
     */
    public record Confusion(String trait, String read, String shown, Probability chance) {}

    /**
     * Checks that the parts belong together.
     *
     * @param members the animals
     * @param litters the litters
     * @param confusions the confusions
     */
    public Kindred {
        members = List.copyOf(members);
        litters = List.copyOf(litters);
        confusions = List.copyOf(confusions);
        Set<String> ids = new LinkedHashSet<>();
        for (Member member : members) {
            if (!ids.add(member.id())) {
                throw new IllegalArgumentException("two members are called " + member.id());
            }
        }
        Set<String> born = new LinkedHashSet<>();
        for (Litter litter : litters) {
            for (String kit : litter.kits()) {
                if (!born.add(kit)) {
                    throw new IllegalArgumentException(kit + " was born twice");
                }
            }
            List<String> named = new ArrayList<>(litter.kits());
            named.add(litter.dam());
            litter.sires().forEach(sire -> named.add(sire.id()));
            for (String id : named) {
                if (!id.isEmpty() && !ids.contains(id)) {
                    throw new IllegalArgumentException(litter.id() + " names " + id + ", which is no member");
                }
            }
        }
        for (Member member : members) {
            sex(member, litters);
        }
    }

    /**
     * Finds a member.
     *
     * @param id its id
     * @return the member
     */
    public Member member(String id) {
        return members.stream()
                .filter(member -> member.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Finds the litter of a member.
     *
     * @param id its id
     * @return the litter in which it was born; empty for a founder
     */
    public Optional<Litter> litterOf(String id) {
        return litters.stream().filter(litter -> litter.kits().contains(id)).findFirst();
    }

    /**
     * Tells what is known of the sex of a member: what is recorded of it, or what a dam, or a male that may be a sire, must be.
     *
     * @param id its id
     * @return {@code female}, {@code male}, or {@code ""}
     */
    public String sex(String id) {
        return sex(member(id), litters);
    }

    private static String sex(Member member, List<Litter> litters) {
        Set<String> known = new LinkedHashSet<>();
        if (!member.sex().isEmpty()) {
            known.add(member.sex());
        }
        for (Litter litter : litters) {
            if (litter.dam().equals(member.id())) {
                known.add("female");
            }
            if (litter.sires().stream().anyMatch(sire -> sire.id().equals(member.id()))) {
                known.add("male");
            }
        }
        if (known.size() > 1) {
            throw new IllegalArgumentException(member.id() + " is both female and male");
        }
        return String.join("", known);
    }

    /**
     * Tells how far a member got.
     *
     * @param id its id
     * @return {@code scored} for founders and parents, else what its litter says
     */
    public String step(String id) {
        boolean parent = litters.stream()
                .anyMatch(litter -> litter.dam().equals(id)
                        || litter.sires().stream().anyMatch(sire -> sire.id().equals(id)));
        return parent ? "scored" : litterOf(id).map(Litter::census).orElse("scored");
    }

    /**
     * Tells where an unrecorded dam comes from.
     *
     * @param litter her litter
     * @return id of a population
     */
    public String populationOfDam(Litter litter) {
        if (litter.population().isEmpty()) {
            throw new IllegalArgumentException("it is not said where the dam of " + litter.id() + " comes from");
        }
        return litter.population();
    }

    /**
     * Tells where an unrecorded sire comes from.
     *
     * @param litter his litter
     * @param sire the sire
     * @return his own population if stated, else that of the litter, else that of the dam
     */
    public String populationOfSire(Litter litter, Candidate sire) {
        if (!sire.population().isEmpty()) {
            return sire.population();
        } else if (!litter.population().isEmpty()) {
            return litter.population();
        }
        String population = litter.dam().isEmpty() ? "" : member(litter.dam()).population();
        if (population.isEmpty()) {
            throw new IllegalArgumentException("it is not said where the sire of " + litter.id() + " comes from");
        }
        return population;
    }

    /**
     * Takes every state for what it is.
     *
     * @return the same without confusions
     */
    public Kindred withoutConfusions() {
        return new Kindred(members, litters, List.of());
    }
}
