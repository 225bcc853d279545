//! Harm to what lives in water.

use reference::hazard::HazardClass as H;

use super::Sieve;
use crate::label::Rules;

/// Cut-off of every sum, in percent; UN GHS chapter 4.1, tables 4.1.3 and 4.1.4; *from memory*.
const CUT_OFF: f64 = 25.0;

impl Sieve<'_, '_> {
    pub(super) fn water(&mut self) {
        if self.rules == Rules::Osha {
            return;
        }
        let times_m = |class, factor: fn(&reference::substance::MFactor) -> u32| -> f64 {
            self.sum(&[class]).parts.iter().map(|part| part.percent() * f64::from(factor(&part.substance.m_factor))).sum()
        };
        let plain = |class| self.sum(&[class]).percent;
        let (a1, a2, a3) = (times_m(H::AquaticAcute1, |m| m.acute), plain(H::AquaticAcute2), plain(H::AquaticAcute3));
        let c1 = times_m(H::AquaticChronic1, |m| m.chronic);
        let (c2, c3) = (plain(H::AquaticChronic2), plain(H::AquaticChronic3));
        let all = [H::AquaticChronic1, H::AquaticChronic2, H::AquaticChronic3, H::AquaticChronic4];
        let any = self.sum(&all).percent;

        let mut sums = vec![
            (H::AquaticAcute1, "M·Acute 1:", a1),
            (H::AquaticChronic1, "M·Chronic 1:", c1),
            (H::AquaticChronic2, "10·M·Chronic 1 + Chronic 2:", 10.0 * c1 + c2),
            (H::AquaticChronic3, "100·M·Chronic 1 + 10·Chronic 2 + Chronic 3:", 100.0 * c1 + 10.0 * c2 + c3),
            (H::AquaticChronic4, "all chronic classes:", any),
        ];
        if self.rules == Rules::UnGhs {
            // The European Union took over the first acute category alone.
            sums.push((H::AquaticAcute2, "10·M·Acute 1 + Acute 2:", 10.0 * a1 + a2));
            sums.push((H::AquaticAcute3, "100·M·Acute 1 + 10·Acute 2 + Acute 3:", 100.0 * a1 + 10.0 * a2 + a3));
        }
        for (class, what, sum) in sums {
            self.find_from(class, what.to_owned(), sum, CUT_OFF);
        }
    }
}
