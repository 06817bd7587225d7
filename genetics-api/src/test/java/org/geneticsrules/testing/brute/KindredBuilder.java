package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/** Writes a pedigree down, fact by fact. Whoever is named first comes first. */
public final class KindredBuilder {

    private final Map<String, Kindred.Member> members = new LinkedHashMap<>();
    private final List<Kindred.Litter> litters = new ArrayList<>();
    private final List<Kindred.Confusion> confusions = new ArrayList<>();

    /**
     * Adds a member of whom nothing is recorded but this.
     *
     * @param id its id
     * @param sex its sex or {@code ""}
     * @param population where it comes from, or {@code ""}
     * @return this
     */
    public KindredBuilder member(String id, String sex, String population) {
        if (members.put(id, new Kindred.Member(id, sex, population, List.of(), List.of())) != null) {
            throw new IllegalArgumentException("two members are called " + id);
        }
        return this;
    }

    /**
     * Adds a litter of two parents, with its kits as members whose sex is not recorded unless they are members already.
     *
     * @param dam the dam, or {@code ""}
     * @param sire the sire, or {@code ""}
     * @param population where parents come from that are not recorded, or {@code ""}
     * @param kits ids of the kits
     * @return this
     */
    public KindredBuilder litter(String dam, String sire, String population, String... kits) {
        return litter(dam, population, List.of(new Kindred.Candidate(sire, "", Probability.ONE)), false, kits);
    }

    /**
     * Adds a litter of a dam and one of several males, with its kits as members unless they are members already.
     *
     * @param dam the dam, or {@code ""}
     * @param population where parents come from that are not recorded, or {@code ""}
     * @param sires the males
     * @param sirePerKit whether each kit has a sire of its own
     * @param kits ids of the kits
     * @return this
     */
    public KindredBuilder litter(
            String dam, String population, List<Kindred.Candidate> sires, boolean sirePerKit, String... kits) {
        for (String kit : kits) {
            if (!members.containsKey(kit)) {
                member(kit, "", "");
            }
        }
        String id = "litter " + (litters.size() + 1);
        litters.add(new Kindred.Litter(id, dam, population, sires, sirePerKit, "scored", List.of(kits)));
        return this;
    }

    /**
     * Says how far the kits of the last litter got.
     *
     * @param census {@code born} or {@code scored}
     * @return this
     */
    public KindredBuilder census(String census) {
        Kindred.Litter last = litters.remove(litters.size() - 1);
        litters.add(new Kindred.Litter(
                last.id(), last.dam(), last.population(), last.sires(), last.sirePerKit(), census, last.kits()));
        return this;
    }

    /**
     * Adds what was seen of a member at one stage.
     *
     * @param id the member
     * @param stage when
     * @param looks one of these
     * @return this
     */
    public KindredBuilder seen(String id, Map<String, String> stage, List<Map<String, String>> looks) {
        Kindred.Member member = members.get(id);
        List<Kindred.Sighting> sightings = new ArrayList<>(member.sightings());
        sightings.add(new Kindred.Sighting(stage, looks));
        return put(new Kindred.Member(id, member.sex(), member.population(), sightings, member.tests()));
    }

    /**
     * Adds that members showed a state, whenever it was.
     *
     * @param trait a trait
     * @param state its state
     * @param ids the members
     * @return this
     */
    public KindredBuilder shows(String trait, String state, String... ids) {
        for (String id : ids) {
            seen(id, Map.of(), List.of(Map.of(trait, state)));
        }
        return this;
    }

    /**
     * Adds a test.
     *
     * @param id the member
     * @param locus the locus tested
     * @param reported one of these
     * @param error how often such tests err
     * @return this
     */
    public KindredBuilder tested(String id, String locus, Set<String> reported, Probability error) {
        Kindred.Member member = members.get(id);
        List<Kindred.Test> tests = new ArrayList<>(member.tests());
        tests.add(new Kindred.Test(locus, reported, error));
        return put(new Kindred.Member(id, member.sex(), member.population(), member.sightings(), tests));
    }

    /**
     * Adds a test that does not err and names one genotype.
     *
     * @param id the member
     * @param locus the locus tested
     * @param genotype its genotype there
     * @return this
     */
    public KindredBuilder has(String id, String locus, String genotype) {
        return tested(id, locus, Set.of(genotype), Probability.ZERO);
    }

    private KindredBuilder put(Kindred.Member member) {
        members.put(member.id(), member);
        return this;
    }

    /**
     * Adds a confusion.
     *
     * @param trait a trait
     * @param read what is written
     * @param shown what is shown
     * @param chance how often
     * @return this
     */
    public KindredBuilder confused(String trait, String read, String shown, Probability chance) {
        confusions.add(new Kindred.Confusion(trait, read, shown, chance));
        return this;
    }

    /**
     * Ends.
     *
     * @return the pedigree
     */
    public Kindred build() {
        return new Kindred(new ArrayList<>(members.values()), litters, confusions);
    }
}
