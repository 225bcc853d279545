//! The data: fluids, materials, practices, machine templates, the bibliography.
